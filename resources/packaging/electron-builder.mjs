/**
 * What one installs, as electron-builder makes it. The app itself is laid out in out/app first (main/launch/staging.mjs):
 * built files, the one package that runs beside them, licence texts. Nothing else goes in.
 *
 * @type {import('electron-builder').Configuration}
 */
const configuration = {
  appId: 'org.boltandbaffle.workshop',
  // Stands in paths; people read "Bolt & Baffle" (CFBundleDisplayName, the desktop file, the window).
  productName: 'Bolt and Baffle',
  copyright: 'Copyright © Bolt & Baffle contributors',
  directories: { app: 'out/app', output: 'out/packages', buildResources: 'resources/icon' },
  // Its binaries come built for every system, by Node-API.
  npmRebuild: false,
  // Of a native module only what the system itself loads lies outside; its scripts stay under the archive's seal.
  asar: { smartUnpack: false },
  asarUnpack: ['node_modules/better-sqlite3/prebuilds/*.node'],
  // Each system leaves out below what is for the others.
  files: ['**/*'],
  // Licence texts stand beside the program, where one can read them without it.
  extraFiles: [
    { from: 'out/app/licences.txt', to: 'licences.txt' },
    { from: 'LICENSE', to: 'LICENSE.txt' },
  ],
  electronLanguages: ['en', 'en-US', 'en-GB'],
  electronFuses: {
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    enableCookieEncryption: true,
    grantFileProtocolExtraPrivileges: false,
    loadBrowserProcessSpecificV8Snapshot: false,
  },
  fileAssociations: [
    {
      ext: 'baffle',
      name: 'Bolt & Baffle workshop',
      description: 'The file of a workshop',
      mimeType: 'application/x-bolt-and-baffle',
      role: 'Editor',
      rank: 'Owner',
    },
  ],
  // Packages are put where they are offered by hand; nothing is uploaded from a build.
  publish: null,

  win: {
    target: [{ target: 'nsis', arch: ['x64', 'arm64'] }],
    icon: 'icon.ico',
    files: ['!node_modules/better-sqlite3/prebuilds/{darwin,linux}*'],
  },
  nsis: {
    oneClick: false,
    perMachine: false,
    allowToChangeInstallationDirectory: true,
    // The workshop's data is its maker's, not the program's.
    deleteAppDataOnUninstall: false,
    license: 'LICENSE',
    artifactName: 'bolt-and-baffle-${version}-windows-${arch}.${ext}',
  },

  mac: {
    target: [{ target: 'dmg', arch: ['universal'] }],
    icon: 'icon.icns',
    category: 'public.app-category.productivity',
    minimumSystemVersion: '12.0',
    hardenedRuntime: true,
    gatekeeperAssess: false,
    entitlements: 'resources/packaging/entitlements.mac.plist',
    entitlementsInherit: 'resources/packaging/entitlements.mac.plist',
    // Only where the build is given a key for it (docs/packaging.md).
    notarize: Boolean(process.env.APPLE_API_KEY),
    extendInfo: { CFBundleDisplayName: 'Bolt & Baffle' },
    files: ['!node_modules/better-sqlite3/prebuilds/{linux,win32}*'],
    // One binary for each processor, the same two in both halves.
    x64ArchFiles: '**/node_modules/better-sqlite3/prebuilds/*.node',
  },
  dmg: { artifactName: 'bolt-and-baffle-${version}-macos.${ext}' },

  linux: {
    target: [
      { target: 'AppImage', arch: ['x64', 'arm64'] },
      { target: 'deb', arch: ['x64', 'arm64'] },
    ],
    icon: 'linux',
    executableName: 'bolt-and-baffle',
    category: 'Office',
    synopsis: 'Stash, lays, shopping and cost of quilted coats',
    maintainer: 'Bolt & Baffle contributors <workshop@boltandbaffle.example>',
    files: ['!node_modules/better-sqlite3/prebuilds/{darwin,win32}*'],
    desktop: { entry: { Name: 'Bolt & Baffle', StartupWMClass: 'Bolt & Baffle' } },
  },
  appImage: { artifactName: 'bolt-and-baffle-${version}-linux-${arch}.${ext}' },
  deb: { artifactName: 'bolt-and-baffle-${version}-linux-${arch}.${ext}' },
};

export default configuration;
