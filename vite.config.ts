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
  // A test runner sets NODE_ENV to "test"; the page that it builds must still be the one that is shipped.
  define: { 'process.env.NODE_ENV': '"production"' },
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
