import react from '@vitejs/plugin-react'
import { defineConfig } from 'vite'

/**
 * The page: one script, one style sheet, nothing inline, relative addresses, so that both hosts can serve it under a
 * strict content security policy.
 */
export default defineConfig({
  root: 'renderer',
  base: './',
  plugins: [react()],
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
