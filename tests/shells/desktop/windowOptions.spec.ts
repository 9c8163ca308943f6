import { expect, test } from 'vitest'
import { windowOptions } from '#shells/desktop/windowOptions.ts'

test('the page runs sandboxed, apart from the preload, without Node', () => {
  const { webPreferences } = windowOptions({ preload: '/app/preload.cjs' })
  expect(webPreferences).toMatchObject({
    preload: '/app/preload.cjs',
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    webviewTag: false,
  })
  expect(Object.keys(webPreferences)).not.toContain('experimentalFeatures')
})
