/** Builds the three parts of the window into out/: main (ESM), preload (CommonJS, as its sandbox asks), renderer. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'electron-vite';
import type { Plugin } from 'vite';

/** Folders of the packages of which code or files go into out/, for the licence texts of what is shipped. */
const bundled = new Set<string>();

/** A quarter less to read at each start; names stay, so that the log of failures says where in the program. */
const lean = { compress: true, mangle: false, codegen: { removeWhitespace: true } };

/** Writes that list anew after each part; workers are parts of their own. */
function listBundled(): Plugin {
  return {
    name: 'list-bundled-packages',
    generateBundle(_options, bundle) {
      const files = Object.values(bundle).flatMap((part) =>
        part.type === 'chunk' ? part.moduleIds : part.originalFileNames,
      );
      for (const file of files) {
        const folder = /^.*(node_modules\/(?:@[^/]+\/)?[^/]+)/.exec(file.replaceAll('\\', '/'))?.[1];
        if (folder !== undefined) bundled.add(folder);
      }
      const out = join(import.meta.dirname, 'out');
      mkdirSync(out, { recursive: true });
      writeFileSync(join(out, 'bundled-packages.json'), JSON.stringify([...bundled].sort(), null, 1));
    },
  };
}

export default defineConfig({
  main: {
    plugins: [listBundled()],
    build: {
      outDir: 'out/main',
      externalizeDeps: false,
      rolldownOptions: {
        input: { electron: 'main/doors/electron.ts', 'loopback-host': 'main/doors/loopback-host.ts' },
        external: ['better-sqlite3'],
        output: { format: 'es', entryFileNames: '[name].js' },
      },
    },
  },
  preload: {
    plugins: [listBundled()],
    build: {
      outDir: 'out/preload',
      externalizeDeps: false,
      rolldownOptions: {
        input: { preload: 'main/doors/preload.ts' },
        output: { format: 'cjs', entryFileNames: '[name].cjs' },
      },
    },
  },
  renderer: {
    root: 'renderer',
    // One folder for both doors, wherever it is served from.
    base: './',
    plugins: [react(), listBundled()],
    // The catalogues of messages are read as text, which takes a fraction of reading them as code.
    json: { stringify: true, namedExports: false },
    worker: { format: 'es', plugins: () => [listBundled()], rolldownOptions: { output: { minify: lean } } },
    build: {
      outDir: 'out/renderer',
      // The page's rules allow no data: fonts or scripts.
      assetsInlineLimit: 0,
      rolldownOptions: {
        input: 'renderer/index.html',
        output: { minify: lean },
      },
    },
  },
});
