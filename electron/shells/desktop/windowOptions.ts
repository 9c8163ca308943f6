/** How the window is made. Everything that keeps the page harmless is here, in one value that a test reads. */
export function windowOptions(paths: { preload: string }) {
  return {
    width: 1280,
    height: 800,
    minWidth: 960,
    minHeight: 640,
    show: false,
    title: 'Breakledger',
    autoHideMenuBar: true,
    webPreferences: {
      preload: paths.preload,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      /** The live curve goes on while another window covers this one. */
      backgroundThrottling: false,
    },
  } as const
}
