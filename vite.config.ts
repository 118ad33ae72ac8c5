import react from '@vitejs/plugin-react'
import { readdirSync, readFileSync, realpathSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import spdxLicences from 'spdx-license-list/full'
import type { Plugin, Rollup } from 'vite'
import { VitePWA } from 'vite-plugin-pwa'
import { defineConfig } from 'vitest/config'

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url))

const core =
  'text german music score hands difficulty fingering exercises judge coach journal review plan'.split(
    ' ',
  )
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

/**
 * What the built page may load and run: its own files and nothing else, so that nothing leaves the
 * machine and a name or text from outside is never run. The engraver is WebAssembly.
 */
const contentSecurityPolicy = Object.entries({
  'default-src': "'none'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'worker-src': "'self'",
  'style-src': "'self'",
  'font-src': "'self'",
  'img-src': "'self'",
  'media-src': "'self'",
  'connect-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
})
  .map(([what, from]) => `${what} ${from}`)
  .join('; ')

const contentSecurity = (): Plugin => ({
  name: 'content-security',
  apply: 'build',
  transformIndexHtml: () => [
    {
      tag: 'meta',
      attrs: { 'http-equiv': 'Content-Security-Policy', content: contentSecurityPolicy },
      injectTo: 'head-prepend',
    },
  ],
})

interface Licence {
  readonly name: string
  readonly version: string
  /** By its SPDX identifier. */
  readonly licence: string
  readonly text: string
}

/** Shipped without being imported: what the service worker is written with, by its own build. */
const inServiceWorker = [
  'workbox-core',
  'workbox-precaching',
  'workbox-routing',
  'workbox-strategies',
]

/** The text beside the package's own code, or that of the standard list where it brings none. */
const licenceOf = (folder: string): Licence => {
  const described: unknown = JSON.parse(readFileSync(`${folder}/package.json`, 'utf8'))
  const { name, version, license, author } = described as Record<string, string>
  const own = readdirSync(folder).find((file) => /^licen[cs]e/i.test(file))
  const listed = license === undefined ? undefined : spdxLicences[license]?.licenseText
  const text = own
    ? readFileSync(`${folder}/${own}`, 'utf8')
    : listed && `By ${author}. The standard text of its licence:\n\n${listed}`
  if (!name || !version || !license || !text)
    throw new Error(`${folder} is shipped, and its licence is not known`)
  return { name, version, licence: license, text }
}

/**
 * The licences of all that is shipped, as `licences.json` beside the page that lists them. The workers
 * are bundled apart: `ofWorker` notes what is theirs, before the page's own bundle is written.
 */
const licences = (): { readonly ofPage: Plugin; readonly ofWorker: Plugin } => {
  const folders = new Set(inServiceWorker.map((name) => here(`./node_modules/${name}`)))
  const note = (bundle: Rollup.OutputBundle): void => {
    for (const file of Object.values(bundle))
      for (const id of file.type === 'chunk' ? file.moduleIds : []) {
        const [folder] = /\/[^:]*\/node_modules\/(?:@[^/]+\/)?[^/]+/.exec(id) ?? []
        if (folder) folders.add(realpathSync(folder))
      }
  }
  return {
    ofWorker: { name: 'licences-of-worker', generateBundle: (_, bundle) => note(bundle) },
    ofPage: {
      name: 'licences',
      apply: 'build',
      generateBundle(_, bundle) {
        note(bundle)
        const all = [...folders]
          .map(licenceOf)
          .toSorted((a, b) => a.name.localeCompare(b.name, 'en'))
        this.emitFile({ type: 'asset', fileName: 'licences.json', source: JSON.stringify(all) })
      },
    },
  }
}
const { ofPage, ofWorker } = licences()

/** On one's own machine packing the engraver at each request takes longer than sending it. */
const servedUnpacked = (): Plugin => ({
  name: 'served-unpacked',
  configurePreviewServer: ({ middlewares }) => {
    middlewares.use((request, _response, next) => {
      delete request.headers['accept-encoding']
      next()
    })
  },
})

/**
 * Once opened, all of it works without a network: every built file is kept, the engraver and the piano
 * among them. A newer version waits until no page of the old one is open or the person asks for it.
 */
const offline = (): Plugin[] =>
  VitePWA({
    registerType: 'prompt',
    injectRegister: false,
    manifest: {
      name: 'Passagework',
      short_name: 'Passagework',
      description: 'A practice monitor for pianists',
      lang: 'en',
      display: 'standalone',
      background_color: '#f7f4ec',
      theme_color: '#f7f4ec',
      icons: [
        { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
        { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
        { src: 'icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      ],
    },
    workbox: {
      globPatterns: ['**/*.{html,js,mjs,css,json,svg,png,woff2,ogg,wasm,mid}'],
      // The engraver is a file of eight megabytes.
      maximumFileSizeToCacheInBytes: 12_000_000,
    },
  })

export default defineConfig({
  root: here('./src'),
  plugins: [
    react(),
    sharpSamples(),
    tonalInParts(),
    contentSecurity(),
    ofPage,
    servedUnpacked(),
    offline(),
  ],
  resolve: { alias: { '@samples': here('./sample-midi'), '@': here('./src') } },
  worker: { format: 'es', plugins: () => [tonalInParts(), ofWorker] },
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
    // All cores: nothing else is to be done meanwhile.
    maxWorkers: '100%',
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
