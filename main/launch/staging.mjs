/**
 * Lays the app out in out/app as it is installed: the built files, the packages that run beside them, a package.json
 * that names only these, and the licence texts of all that is shipped.
 */
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

const licencesHead =
  'Bolt & Baffle contains these works of others. Electron and Chromium have texts of their own beside this one.';

/** Works of others that lie among the project's own files. */
const worksBeside = [{ title: 'Noto Sans 2.015 (OFL-1.1)', file: 'resources/typeface/licence.txt' }];

/** Of a package that runs beside the built files, what it needs to run. */
const runningParts = ['LICENSE', 'lib', 'prebuilds'];

/**
 * Fills `app` anew from the build in `root`. Throws where a package has no licence text.
 *
 * @param {string} root top folder of the project
 * @param {string} app
 */
export function stageApp(root, app) {
  rmSync(app, { recursive: true, force: true });
  mkdirSync(join(app, 'out'), { recursive: true });
  for (const part of ['main', 'preload', 'renderer']) {
    cpSync(join(root, 'out', part), join(app, 'out', part), { recursive: true });
  }
  const { name, productName, version, description, license, type, main, dependencies } = readJson(
    join(root, 'package.json'),
  );
  // The package itself may ask for what only its compiling needs.
  for (const running of Object.keys(dependencies)) {
    const from = join(root, 'node_modules', running);
    for (const part of runningParts) {
      if (existsSync(join(from, part))) {
        cpSync(join(from, part), join(app, 'node_modules', running, part), { recursive: true });
      }
    }
    const {
      dependencies: _,
      devDependencies: __,
      scripts: ___,
      ...kept
    } = readJson(join(from, 'package.json'));
    writeJson(join(app, 'node_modules', running, 'package.json'), kept);
  }
  const staged = {
    name,
    productName,
    version,
    description,
    author: 'Bolt & Baffle contributors',
    license,
    type,
    main,
    dependencies,
  };
  writeJson(join(app, 'package.json'), staged);
  writeFileSync(join(app, 'licences.txt'), licenceTexts(root, shippedPackages(root)));
}

/**
 * Folders of the packages whose code or files are shipped, relative to root: bundled ones as the build has listed
 * them, and the dependencies.
 *
 * @param {string} root
 * @returns {string[]}
 */
export function shippedPackages(root) {
  const bundled = readJson(join(root, 'out', 'bundled-packages.json'));
  const beside = Object.keys(readJson(join(root, 'package.json')).dependencies);
  return [...new Set([...bundled, ...beside.map((name) => `node_modules/${name}`)])].sort();
}

/**
 * One text: for each package its name, version, licence and the licence's words, as they lie in the package or, where
 * it has none or carries a work of others, in resources/packaging/licences; and works that are no packages.
 *
 * @param {string} root
 * @param {readonly string[]} packages as of shippedPackages
 */
export function licenceTexts(root, packages) {
  const parts = packages.map((path) => {
    const folder = join(root, path);
    const { name, version, license } = readJson(join(folder, 'package.json'));
    const own = readdirSync(folder, { withFileTypes: true })
      .filter((entry) => entry.isFile() && /^(licen[cs]e|copying|notice)/i.test(entry.name))
      .map((entry) => join(folder, entry.name));
    const added = join(root, 'resources', 'packaging', 'licences', `${name}.txt`);
    const files = existsSync(added) ? [...own, added] : own;
    if (files.length === 0) throw new Error(`${name} ${version} (${license}) has no licence text`);
    return [
      `${name} ${version} (${license})`,
      ...files.map((file) => readFileSync(file, 'utf8').trim()),
    ].join('\n\n');
  });
  const beside = worksBeside.map(({ title, file }) =>
    [title, readFileSync(join(root, file), 'utf8').trim()].join('\n\n'),
  );
  const line = `\n\n${'-'.repeat(80)}\n\n`;
  return `${[licencesHead, ...parts, ...beside].join(line)}\n`;
}

/** @param {string} file */
function readJson(file) {
  return JSON.parse(readFileSync(file, 'utf8'));
}

/**
 * @param {string} file
 * @param {unknown} value
 */
function writeJson(file, value) {
  writeFileSync(file, `${JSON.stringify(value, null, 2)}\n`);
}
