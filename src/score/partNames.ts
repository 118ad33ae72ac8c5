import type { Hand } from '@/music/music'

/** Words by which files name the part of a hand (common practice, no source). */
const words: Readonly<Record<Hand, RegExp>> = {
  right: word('right|rh|r\\.? ?h\\.?|treble|upper|up|m\\. ?d\\.?|droite|destra|rechte?s?'),
  left: word('left|lh|l\\.? ?h\\.?|bass|lower|down|m\\. ?[gs]\\.?|gauche|sinistra|linke?s?'),
}

/** 'Piano (right hand)' -> right, 'L.H.' -> left; `undefined` when the name tells neither or both. */
export const handOfName = (name: string): Hand | undefined => {
  const right = words.right.test(name)
  const left = words.left.test(name)
  return right === left ? undefined : right ? 'right' : 'left'
}

function word(choices: string): RegExp {
  return new RegExp(`(^|[^a-z])(${choices})([^a-z]|$)`, 'i')
}
