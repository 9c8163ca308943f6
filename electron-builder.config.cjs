const { readdirSync, rmSync } = require('node:fs')
const { join } = require('node:path')

/**
 * How the program is packed. Everything of ours is bundled in dist; of node_modules only the packages with native parts go
 * along, with their ready-made binaries for this system.
 */

/**
 * Leaves only the native parts for the system that is packed for, whichever system packs. As a step of its own: file
 * patterns per system would bring back what the common ones leave out.
 */
const keepOwnNativeParts = ({ packager, appOutDir, electronPlatformName: platform, arch }) => {
  const modules = join(packager.getResourcesDir(appOutDir), 'app/node_modules')
  const processor = { 1: 'x64', 3: 'arm64' }[arch]
  const serial = platform === 'darwin' ? 'darwin-x64+arm64' : `${platform}-${processor}`
  for (const [folder, own] of [
    ['better-sqlite3/prebuilds', `${platform}-${processor}.node`],
    ['@serialport/bindings-cpp/prebuilds', serial],
  ]) {
    const names = readdirSync(join(modules, folder))
    if (!names.includes(own)) throw new Error(`${folder} holds nothing for ${platform} on ${processor}`)
    for (const name of names) if (name !== own) rmSync(join(modules, folder, name), { recursive: true })
  }
}

/** @type {import('electron-builder').Configuration} */
module.exports = {
  appId: 'org.breakledger.app',
  productName: 'Breakledger',
  copyright: 'MIT licence, see LICENSE',
  directories: { output: 'release' },
  // Plain files, no asar archive: the native parts for other systems can then be left out after packing.
  asar: false,
  // The binary runs this program: no script as plain Node, no inspector, no options from the surroundings.
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    grantFileProtocolExtraPrivileges: false,
  },
  // Node-API binaries fit every Electron, so nothing is compiled or fetched.
  npmRebuild: false,
  nodeGypRebuild: false,
  // What is needed of node_modules goes along by itself; of that folder only exclusions may be named here.
  files: [
    'package.json',
    'LICENSE',
    'dist/licences.txt',
    'dist/renderer/**',
    'dist/desktop/**',
    'dist/threads/**',
    '!node_modules/**/*.{map,ts,mts,cts,md,markdown}',
    '!node_modules/better-sqlite3/{deps,src}/**',
    '!node_modules/@serialport/bindings-cpp/src/**',
    '!node_modules/**/node-addon-api/**',
    '!node_modules/**/binding.gyp',
    // Bundled already, or only there to run the project's own scripts.
    '!node_modules/{react,react-dom,scheduler,uplot,zod,ws,node-bin-*,node-*-x64,node-*-arm64}/**',
  ],
  afterPack: keepOwnNativeParts,
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
  mac: {
    target: ['dmg'],
    category: 'public.app-category.education',
    identity: null,
  },
}
