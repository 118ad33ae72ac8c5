/** Standard MIDI Files written by hand for the tests, in hexadecimal as the specification prints them. */
export const hex = (text: string): Uint8Array =>
  Uint8Array.from(text.trim().split(/\s+/).filter(Boolean), (byte) => parseInt(byte, 16))

const ascii = (text: string): number[] => [...text].map((c) => c.charCodeAt(0))
const word = (n: number): number[] => [(n >> 8) & 0xff, n & 0xff]

export const chunk = (letters: string, data: Iterable<number>): number[] => {
  const bytes = [...data]
  return [...ascii(letters), ...word(bytes.length >>> 16), ...word(bytes.length), ...bytes]
}

/** A file of tracks in hexadecimal, each ended by an end of track; 96 ticks a quarter by default. */
export const smf = (
  tracks: readonly string[],
  { format = tracks.length > 1 ? 1 : 0, division = 96, announced = tracks.length } = {},
): Uint8Array =>
  Uint8Array.from([
    ...chunk('MThd', [...word(format), ...word(announced), ...word(division)]),
    ...tracks.flatMap((track) => chunk('MTrk', [...hex(track), 0, 0xff, 0x2f, 0])),
  ])

/** One quarter of middle C at 96 ticks a quarter. */
export const middleC = '00 90 3C 40 60 80 3C 00'

export const mark = (type: string, text: string): string =>
  `00 FF ${type} ${[text.length, ...ascii(text)].map((n) => n.toString(16).padStart(2, '0')).join(' ')}`

/** The two ways in which SMF 1.0 (RP-001) itself writes its example of four bars; from memory. */
export const specificationExample = {
  format0: hex(`4D 54 68 64 00 00 00 06 00 00 00 01 00 60  4D 54 72 6B 00 00 00 3B
    00 FF 58 04 04 02 18 08  00 FF 51 03 07 A1 20  00 C0 05  00 C1 2E  00 C2 46
    00 92 30 60  00 3C 60  60 91 43 40  60 90 4C 20
    81 40 82 30 40  00 3C 40  00 81 43 40  00 80 4C 40  00 FF 2F 00`),
  format1: hex(`4D 54 68 64 00 00 00 06 00 01 00 04 00 60
    4D 54 72 6B 00 00 00 14  00 FF 58 04 04 02 18 08  00 FF 51 03 07 A1 20  83 00 FF 2F 00
    4D 54 72 6B 00 00 00 10  00 C0 05  81 40 90 4C 20  81 40 4C 00  00 FF 2F 00
    4D 54 72 6B 00 00 00 0F  00 C1 2E  60 91 43 40  82 20 43 00  00 FF 2F 00
    4D 54 72 6B 00 00 00 15  00 C2 46  00 92 30 60  00 3C 60  83 00 30 00  00 3C 00  00 FF 2F 00`),
}
