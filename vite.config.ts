import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

/**
 * The page: one script, one style sheet, nothing inline, relative addresses, so that both hosts can serve it under a
 * strict content security policy. Its elements are made by renderer/widgets/visible, which shows what else is invisible.
 */
export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react({ jsxImportSource: '#renderer/widgets/visible' })],
  build: {
    outDir: '../dist/renderer',
    emptyOutDir: true,
    target: 'chrome140',
    assetsInlineLimit: 0,
    cssCodeSplit: false,
    modulePreload: { polyfill: false },
    chunkSizeWarningLimit: 1500,
    rolldownOptions: { output: { codeSplitting: false } },
  },
})
