import type { Listed } from './library'
import { remarkOf } from './remarkOf'

/**
 * The pieces whose title, composer or remark hold every word that is looked for, whatever the case
 * and the accents: 'etude sor' finds 'Étude' by 'Sørensen'. Nothing looked for: all of them.
 */
export const searchPieces = (listed: readonly Listed[], wanted: string): readonly Listed[] => {
  const isHit = holdsWords(wanted)
  return listed.filter((piece) =>
    isHit(`${piece.title} ${piece.composer ?? ''} ${remarkOf(piece)}`),
  )
}

/** Whether a text holds every word that is looked for; anything holds nothing. */
export const holdsWords = (wanted: string): ((text: string) => boolean) => {
  const words = plain(wanted).split(/\s+/).filter(Boolean)
  return (text) => {
    const within = plain(text)
    return words.every((word) => within.includes(word))
  }
}

/** Letters that Unicode does not take apart into a plain one and its accent. */
const whole: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ł: 'l',
  đ: 'd',
  ı: 'i',
}

/** Small letters without accents, which NFKD takes apart (Unicode Standard Annex 15). */
const plain = (text: string): string =>
  text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[ßæœøłđı]/g, (letter) => whole[letter] ?? letter)
