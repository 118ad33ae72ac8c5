/** `npm run size`: what a first visit loads, gzipped; exit code 1 above a budget. Needs a build. */
import { readFileSync, readdirSync, statSync } from 'node:fs'
import { dirname, join, normalize } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { record } from './record'

/** Without engraver, MIDI library and sound samples, which come when they are needed. React alone is 68. */
const budgetKb = 152
/** Everything that is kept for use without a network. */
const offlineBudgetMb = 15

const dist =
  process.argv.slice(2).find((word) => !word.startsWith('--')) ??
  fileURLToPath(new URL('../../dist/', import.meta.url))

/** Files that a script or style sheet loads at once: static imports, not `import()`. */
const staticImports = (path: string, text: string): string[] => {
  if (!path.endsWith('.js')) return []
  const found = text.matchAll(/\b(?:import|from)\s*["'](\.[^"']+\.js)["']/g)
  return [...found].map(([, to = '']) => normalize(join(dirname(path), to)))
}

const linkedFromPage = (html: string): string[] => {
  const tags = html.matchAll(
    /<(?:script[^>]*\ssrc|link[^>]*\shref)="\.?\/?([^"]+\.(?:js|css|svg))"/g,
  )
  return [...tags].map(([, path = '']) => path)
}

const sizes = new Map<string, number>()
const queue = ['index.html']
for (let path = queue.shift(); path !== undefined; path = queue.shift()) {
  if (sizes.has(path)) continue
  const bytes = readFileSync(join(dist, path))
  sizes.set(path, gzipSync(bytes, { level: 9 }).length)
  const text = bytes.toString('utf8')
  queue.push(...(path === 'index.html' ? linkedFromPage(text) : staticImports(path, text)))
}

/** The face for Latin text, which the page fetches when it has letters to show; woff2 is compressed already. */
const faces = readdirSync(join(dist, 'assets')).filter((name) => /-latin-wght.*\.woff2$/.test(name))
const faceBytes = faces.reduce((sum, name) => sum + statSync(join(dist, 'assets', name)).size, 0)

const kb = (bytes: number): string => (bytes / 1000).toFixed(1)
for (const [path, size] of sizes) console.log(`${kb(size).padStart(8)} kB  ${path}`)
const total = [...sizes.values()].reduce((sum, size) => sum + size, 0)
const all = readdirSync(dist, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .reduce((sum, { parentPath, name }) => sum + statSync(join(parentPath, name)).size, 0)
const sums = [
  `${kb(all).padStart(8)} kB  kept for use without a network (budget ${offlineBudgetMb}000)`,
  `${kb(total).padStart(8)} kB  first load, gzipped (budget ${budgetKb})`,
  `${kb(faceBytes).padStart(8)} kB  besides: the text face, kept by the browser between visits`,
]
for (const line of sums) console.log(line)
record('npm run size', sums)
const scripts = [...sizes.keys()].filter((path) => path.endsWith('.js')).length
if (scripts === 0) console.error('no script was found in the page: nothing has been measured')
const isOver = total > budgetKb * 1000 || all > offlineBudgetMb * 1e6
process.exitCode = scripts === 0 || isOver ? 1 : 0
