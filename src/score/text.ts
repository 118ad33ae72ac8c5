/**
 * The text of a mark, given one character a byte. SMF 1.0 names no encoding: files hold UTF-8 or
 * Latin-1. What is valid UTF-8 is taken as such ('Ã©' -> 'é'), anything else as Latin-1.
 */
export const decodeText = (latin1: string): string => {
  const clean = (text: string): string =>
    [...text]
      .filter((c) => c >= ' ' && c !== '\uFEFF' && c !== '\x7F')
      .join('')
      .trim()
  if (/^[\x20-\x7E]*$/.test(latin1)) return latin1.trim()
  try {
    return clean(decodeURIComponent([...latin1].map(percent).join('')))
  } catch {
    return clean(latin1)
  }
}

/** Each character of the result is one byte of the text in UTF-8. */
export const encodeText = (text: string): number[] =>
  [...encodeURIComponent(text).matchAll(/%([0-9A-F]{2})|([^%])/g)].map(([, hex, plain]) =>
    hex === undefined ? (plain ?? ' ').charCodeAt(0) : parseInt(hex, 16),
  )

const percent = (c: string): string => `%${c.charCodeAt(0).toString(16).padStart(2, '0')}`
