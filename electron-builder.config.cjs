/**
 * How the program is packed. Everything of ours is bundled in dist; of node_modules only the packages with native parts go
 * along, with their ready-made binaries for this system.
 */

// Filled in by electron-builder for each system that it packs for.
const platform = '$' + '{platform}'
const arch = '$' + '{arch}'

/** @type {import('electron-builder').Configuration} */
module.exports = {
  appId: 'org.breakledger.app',
  productName: 'Breakledger',
  copyright: 'MIT licence, see LICENSE',
  directories: { output: 'release' },
  // Plain files, no asar archive: the archive's worker thread, the native parts and the commands (which run in Node alone)
  // must be readable without Electron's help, and there would be little left to put into one.
  asar: false,
  // Node-API binaries fit every Electron, so nothing is compiled or fetched.
  npmRebuild: false,
  nodeGypRebuild: false,
  files: [
    '!**/*',
    'package.json',
    'LICENSE',
    'dist/renderer/**',
    'dist/desktop/**',
    'node_modules/**',
    '!node_modules/**/*.{map,ts,mts,cts,md,markdown}',
    '!node_modules/better-sqlite3/{deps,src,binding.gyp}',
    '!node_modules/@serialport/bindings-cpp/{src,binding.gyp}',
    '!node_modules/**/node-addon-api/**',
    // Bundled already, or only there to run the project's own scripts.
    '!node_modules/{react,react-dom,scheduler,uplot,zod,ws,node-bin-*,node-*-x64,node-*-arm64}/**',
    '!node_modules/better-sqlite3/prebuilds/*',
    `node_modules/better-sqlite3/prebuilds/${platform}-${arch}.node`,
    '!node_modules/@serialport/bindings-cpp/prebuilds/**',
    `node_modules/@serialport/bindings-cpp/prebuilds/{${platform}-${arch},darwin-x64+arm64}/**`,
  ],
  extraResources: [{ from: 'electron/shells/desktop/launchers', to: '.' }],
  linux: {
    target: ['AppImage', 'deb'],
    executableName: 'breakledger',
    category: 'Science',
    synopsis: 'Plan, break, record and publish adhesive bond tests on a small press',
    maintainer: 'Breakledger contributors <breakledger@example.invalid>',
  },
  deb: {
    depends: ['libgtk-3-0', 'libnotify4', 'libnss3', 'libxss1', 'libxtst6', 'xdg-utils', 'libatspi2.0-0', 'libuuid1'],
  },
  win: { target: ['nsis'] },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: { target: ['dmg'], category: 'public.app-category.education', identity: null },
}
