import react from '@vitejs/plugin-react'
import { readFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Plugin } from 'vite'
import { defineConfig } from 'vitest/config'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

const core =
  'music score hands difficulty fingering exercises judge coach journal review plan'.split(' ')
const house = ['lint', 'support']
const testsIn = (folders: readonly string[]): string[] =>
  folders.map((folder) => `tests/${folder}/**/*.test.{ts,tsx}`)

/** Serves the samples with a # in their name, which would end the address: D#4v8.ogg as Dsharp4v8.ogg. */
const sharpSamples = (): Plugin => {
  const prefix = '\0sharp:'
  let building = false
  return {
    name: 'sharp-samples',
    enforce: 'pre',
    configResolved: (config) => {
      building = config.command === 'build'
    },
    resolveId: (source, importer) =>
      importer !== undefined && /#\dv\d\.ogg\?url$/.test(source)
        ? prefix +
          resolve(dirname(importer), source.replace('?url', '')).replace(
            /#(\dv\d\.ogg)$/,
            'sharp$1',
          )
        : undefined,
    load(id) {
      if (!id.startsWith(prefix)) return undefined
      const source = readFileSync(id.slice(prefix.length).replace(/sharp(\dv\d\.ogg)$/, '#$1'))
      if (!building) return `export default 'data:audio/ogg;base64,${source.toString('base64')}'`
      const name = id.slice(id.lastIndexOf('/') + 1)
      const reference = this.emitFile({ type: 'asset', name, source })
      return `export default import.meta.ROLLUP_FILE_URL_${reference}`
    },
  }
}

/**
 * tonal fills tables of chords and scales as it is loaded, so that a bundler keeps them all; of its
 * parts only those that are used are wanted.
 */
const tonalInParts = (): Plugin => ({
  name: 'tonal-in-parts',
  transform: (code, id) =>
    /\/node_modules\/(@tonaljs\/|tonal\/)/.test(id)
      ? { code, map: null, moduleSideEffects: false }
      : undefined,
})

export default defineConfig({
  root: here('./src'),
  plugins: [react(), sharpSamples(), tonalInParts()],
  resolve: { alias: { '@samples': here('./sample-midi'), '@': here('./src') } },
  worker: { format: 'es', plugins: () => [tonalInParts()] },
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
    environment: 'node',
    testTimeout: 20_000,
    projects: [
      { extends: true, test: { name: 'core', include: testsIn(core), isolate: false } },
      { extends: true, test: { name: 'house', include: testsIn(house) } },
      {
        extends: true,
        test: {
          name: 'edges',
          include: testsIn(['*']),
          exclude: testsIn([...core, ...house, 'e2e', 'bench']),
        },
      },
    ],
  },
})
