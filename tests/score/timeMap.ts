/** What sounds when in a MusicXML file, as verovio, an independent reader, and as we read it. */
import type { VerovioToolkit } from 'verovio/esm'
import { readText } from './musicXmlText'

/**
 * 'quarters:key' of each struck note as verovio reads the file. It also lists the notes that only
 * continue a tie; those are told apart by having no id of ours.
 */
export const byVerovio = (toolkit: VerovioToolkit, text: string): string[] => {
  let count = 0
  const withIds = text.replaceAll(/<note>(.*?)<\/note>/g, (note, inner: string) =>
    inner.includes('<tie type="stop"/>') ? note : `<note id="own${count++}">${inner}</note>`,
  )
  if (toolkit.loadData(withIds) !== 1) throw new Error('verovio does not read the file')
  return toolkit
    .renderToTimemap()
    .flatMap(({ qstamp, on = [] }) =>
      on
        .filter((id) => id.startsWith('own'))
        .map((id) => `${place(qstamp)}:${toolkit.getMIDIValuesForElement(id).pitch}`),
    )
    .toSorted()
}

export const byUs = (text: string): string[] => {
  const { score } = readText(text)
  return score.notes.map((n) => `${place(n.start / score.ticksPerQuarter)}:${n.key}`).toSorted()
}

/** On a grid that holds triplets, quintuplets and 64ths. */
const place = (quarters: number): string => (Math.round(quarters * 960) / 960).toFixed(4)
