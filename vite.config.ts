import react from '@vitejs/plugin-react'
import { fileURLToPath } from 'node:url'
import { defineConfig } from 'vitest/config'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

export default defineConfig({
  root: here('./src'),
  plugins: [react()],
  resolve: { alias: { '@samples': here('./sample-midi'), '@': here('./src') } },
  worker: { format: 'es' },
  build: {
    outDir: here('./dist'),
    emptyOutDir: true,
    target: 'es2023',
    assetsInlineLimit: 0,
    chunkSizeWarningLimit: 8000,
  },
  preview: { host: '127.0.0.1', port: 4173 },
  server: { host: '127.0.0.1', fs: { allow: [here('.')] } },
  test: {
    root: here('.'),
    include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
    exclude: ['tests/e2e/**', 'tests/bench/**', 'node_modules/**'],
    environment: 'node',
    testTimeout: 20_000,
  },
})
