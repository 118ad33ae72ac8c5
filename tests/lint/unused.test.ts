import { expect, test } from 'vitest'
import { inPlantedProject, run } from './plant'

const files = {
  'src/index.html': '<script type="module" src="./main.tsx"></script>',
  'src/main.tsx': `import { used } from '@/music/keys'\nimport 'react'\nconsole.log(used)`,
  'src/music/keys.ts': 'export const used = 1\nexport const unused = 2',
  'src/music/forgotten.ts': 'export const a = 1',
  'tests/music/keys.test.ts': `import { used } from '@/music/keys'\nimport 'unlisted'\nconsole.log(used)`,
}

interface Report {
  readonly issues: readonly {
    readonly file: string
    readonly [kind: string]: string | readonly { readonly name: string }[]
  }[]
}

const findUnused = (): Promise<(kind: string) => readonly string[]> =>
  inPlantedProject(files, async (directory) => {
    const { output } = await run(
      'knip',
      ['--config', 'tests/knip.json', '--reporter', 'json', '--no-config-hints'],
      directory,
    )
    const { issues } = JSON.parse(output) as Report
    return (kind) =>
      issues.flatMap((issue) => {
        const found = issue[kind]
        return typeof found === 'object' ? found.map(({ name }) => name) : []
      })
  })

test('a file, an export and a package that nobody uses are reported, and a package that is used but not listed', async () => {
  const unused = await findUnused()
  expect(unused('files')).toEqual(['src/music/forgotten.ts'])
  expect(unused('exports')).toEqual(['unused'])
  expect(unused('dependencies')).toContain('webmidi')
  expect(unused('dependencies')).not.toContain('react')
  expect(unused('unlisted')).toEqual(['unlisted'])
}, 60_000)
