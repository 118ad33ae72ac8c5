import { expect, test } from 'vitest'
import type { Engraver, SystemRequest } from '@/engraving/engraving'
import type { SystemBars } from '@/engraving/systems'
import type { Score } from '@/music/music'
import { noteId } from '@/music/units'
import { createLines, type Lines } from '@/views/lines'
import { writeScore } from '../music/writeScore'

const score = writeScore({ right: 'C5:4 D5:4 E5:4 F5:4 G5:4' })
const plan: readonly SystemBars[] = score.bars.map((_, bar) => ({ fromBar: bar, toBar: bar }))

/** An engraver that answers when the test says so, and what it was asked for, as 'bar@width'. */
const createDesk = () => {
  const asked: string[] = []
  const waiting: (() => void)[] = []
  const engraver: Engraver = {
    warm: () => {},
    dispose: () => {},
    engrave: () => Promise.reject(new Error('only lines are drawn')),
    engraveSystem: ({ fromBar, width, space }: SystemRequest) => {
      asked.push(`${fromBar}@${width}`)
      return new Promise((answer) =>
        waiting.push(() =>
          answer(
            width > 0
              ? { ok: true, value: { svg: `${width}`, width, height: space } }
              : { ok: false, reason: { kind: 'empty' } },
          ),
        ),
      )
    },
  }
  const answer = async (times: number): Promise<void> => {
    for (let i = 0; i < times; i++) {
      waiting.shift()?.()
      await new Promise((resolve) => setTimeout(resolve, 0))
    }
  }
  return { asked, answer, lines: createLines(engraver) }
}

const show = (lines: Lines, width = 100, shown: Score = score): void =>
  lines.show({ score: shown, plan, width, space: 9 })

test('what is in sight is drawn first, then the rest from the beginning', async () => {
  const { lines, asked, answer } = createDesk()
  lines.setNear(3, true)
  lines.setNear(2, true)
  show(lines)
  await answer(6)
  expect(asked.join(' ')).toBe('2@100 3@100 0@100 1@100 4@100')
  expect(lines.progress()).toBe(5)
})

test('when the width changes all is drawn anew, and what comes late is dropped', async () => {
  const { lines, asked, answer } = createDesk()
  show(lines)
  await answer(1)
  show(lines, 200)
  expect(lines.line(0)).toBeUndefined()
  await answer(6)
  expect(asked.join(' ')).toBe('0@100 1@100 0@200 1@200 2@200 3@200 4@200')
  expect(lines.line(1)?.engraving.svg).toBe('200')
})

test('when a hand is corrected its line alone is drawn again, and stands until then', async () => {
  const { lines, asked, answer } = createDesk()
  show(lines)
  await answer(5)
  const notes = score.notes.map((note) =>
    note.barIndex === 3 ? { ...note, hand: 'left' as const } : note,
  )
  show(lines, 100, { ...score, notes })
  expect(lines.line(3)).toBeDefined()
  await answer(2)
  expect(asked.slice(5).join(' ')).toBe('3@100')
})

test('where nothing can stand each line is asked for once', async () => {
  const { lines, asked, answer } = createDesk()
  show(lines, 0)
  await answer(10)
  expect(asked).toHaveLength(5)
  expect(lines.progress()).toBe(0)
})

test('stopped, it asks for no more; shown again, it goes on', async () => {
  const { lines, asked, answer } = createDesk()
  show(lines)
  lines.stop()
  await answer(3)
  expect(asked).toHaveLength(1)
  show(lines)
  await answer(5)
  expect(lines.progress()).toBe(5)
})

test('other marks draw their line again, and no other', async () => {
  const { lines, asked, answer } = createDesk()
  const ring = { mark: { shape: 'missing', note: noteId('n4_1k74') }, weight: 'heavy' } as const
  const sheet = { score, plan, width: 100, space: 9 }
  lines.show(sheet)
  await answer(5)
  asked.length = 0
  const marks = new Map([[1, [ring]]])
  lines.show({ ...sheet, marks })
  await answer(5)
  expect(asked.join(' ')).toBe('1@100')
  lines.show({ ...sheet, marks: new Map(marks) })
  expect(asked).toHaveLength(1)
  lines.show(sheet)
  await answer(5)
  expect(asked.join(' ')).toBe('1@100 1@100')
})
