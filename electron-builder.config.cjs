/**
 * How the program is packed. Everything of ours is bundled in dist; of node_modules only the packages with native parts go
 * along, with their ready-made binaries for the system that is packed for.
 */

/**
 * What is packed for a system. What is needed of node_modules goes along by itself; of that folder only exclusions may be
 * named. One whole list per system: exclusions of a system beside a common list would let everything in.
 */
const filesFor = (system) => [
  'package.json',
  'LICENSE',
  'dist/renderer/**',
  'dist/desktop/**',
  'dist/threads/**',
  '!node_modules/**/*.{map,ts,mts,cts,md,markdown}',
  '!node_modules/better-sqlite3/{deps,src}/**',
  '!node_modules/@serialport/bindings-cpp/src/**',
  '!node_modules/**/node-addon-api/**',
  '!node_modules/**/binding.gyp',
  // Native parts of other systems, as the packages name them.
  `!node_modules/better-sqlite3/prebuilds/!(${system}-\${arch}).node`,
  `!node_modules/@serialport/bindings-cpp/prebuilds/!(${system === 'darwin' ? 'darwin-x64+arm64' : `${system}-\${arch}`})/**`,
  // Bundled already, or only there to run the project's own scripts.
  '!node_modules/{react,react-dom,scheduler,uplot,zod,ws,node-bin-*,node-*-x64,node-*-arm64}/**',
  '!node_modules/{d3-*,internmap}/**',
  '!node_modules/{@fontsource,@fontsource-variable}/**',
]

/** @type {import('electron-builder').Configuration} */
module.exports = {
  appId: 'org.breakledger.app',
  productName: 'Breakledger',
  copyright: 'MIT licence, see LICENSE',
  directories: { output: 'release' },
  // One archive with a hash of every file. Native parts alone lie beside it, since the system loads them from files.
  asar: { smartUnpack: false },
  asarUnpack: ['**/*.node'],
  // The binary runs this program: no script as plain Node, no inspector, no options from the surroundings, no other code
  // than the archive's, whose hashes it checks on Windows and macOS.
  electronFuses: {
    runAsNode: false,
    enableCookieEncryption: true,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    enableEmbeddedAsarIntegrityValidation: true,
    onlyLoadAppFromAsar: true,
    grantFileProtocolExtraPrivileges: false,
  },
  // Node-API binaries fit every Electron, so nothing is compiled or fetched.
  npmRebuild: false,
  nodeGypRebuild: false,
  extraResources: [{ from: 'electron/shells/desktop/launchers', to: '.' }],
  linux: {
    files: filesFor('linux'),
    target: ['AppImage', 'deb'],
    executableName: 'breakledger',
    category: 'Science',
    synopsis: 'Plan, break, record and publish adhesive bond tests on a small press',
    maintainer: 'Breakledger contributors <breakledger@example.invalid>',
  },
  deb: {
    depends: ['libgtk-3-0', 'libnotify4', 'libnss3', 'libxss1', 'libxtst6', 'xdg-utils', 'libatspi2.0-0', 'libuuid1'],
  },
  win: { files: filesFor('win32'), target: ['nsis'] },
  nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
  mac: {
    files: filesFor('darwin'),
    target: ['dmg'],
    category: 'public.app-category.education',
    identity: null,
    extendInfo: { NSCameraUsageDescription: 'To take photographs of broken faces.' },
  },
}
