/** Bytes as base64 without padding, and back (RFC 4648, section 4). The core knows neither DOM nor Node. */
const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const values: ReadonlyMap<string, number> = new Map([...alphabet].map((letter, i) => [letter, i]))

export const formatBase64 = (bytes: ArrayLike<number>): string => {
  let text = ''
  for (let i = 0; i < bytes.length; i += 3) {
    const group = ((bytes[i] ?? 0) << 16) | ((bytes[i + 1] ?? 0) << 8) | (bytes[i + 2] ?? 0)
    const letters = Math.min(4, bytes.length - i + 1)
    for (let k = 0; k < letters; k++) text += alphabet.charAt((group >> (18 - 6 * k)) & 63)
  }
  return text
}

/** How many bytes a text stands for. */
export const base64Size = (text: string): number => Math.floor((text.length * 3) / 4)

/** `undefined` when the text is not base64. */
export const parseBase64 = (text: string): readonly number[] | undefined => {
  const bytes: number[] = []
  let group = 0
  let bits = 0
  for (const letter of text) {
    const value = values.get(letter)
    if (value === undefined) return undefined
    group = ((group << 6) | value) & 0xfff
    bits += 6
    if (bits < 8) continue
    bits -= 8
    bytes.push((group >> bits) & 0xff)
  }
  return text.length % 4 === 1 ? undefined : bytes
}
