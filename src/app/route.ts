import { handChoices } from '@/music/music'
import type { Place } from '@/music/place'
import { pieceId, type PieceId } from '@/music/units'

/** Where the person is; it stands in the address, so that a reload comes back to the same place. */
export type Route =
  | { readonly kind: 'pieces' }
  | { readonly kind: 'piece'; readonly piece: PieceId }
  | { readonly kind: 'practice'; readonly piece: PieceId; readonly place: Place }
  | { readonly kind: 'summary' }
  | { readonly kind: 'tapTest' }
  /** A fragment is typed in. */
  | { readonly kind: 'write' }
  /** A fragment is played in. */
  | { readonly kind: 'record' }

/** { kind: 'practice', piece: 'p1', place: { from: '0', to: '7_2', hand: 'right' } } -> '#/practice/p1/0-7_2/right' */
export const formatRoute = (route: Route): string => {
  switch (route.kind) {
    case 'pieces':
      return '#/'
    case 'piece':
      return `#/piece/${route.piece}`
    case 'practice':
      return `#/practice/${route.piece}/${route.place.from}-${route.place.to}/${route.place.hand}`
    case 'summary':
      return '#/summary'
    case 'tapTest':
      return '#/taptest'
    case 'write':
      return '#/write'
    case 'record':
      return '#/record'
  }
}

/** An address that says nothing known leads to the pieces. */
export const parseRoute = (hash: string): Route => {
  const [kind, piece, stretch, hand] = hash.replace(/^#\/?/, '').split('/')
  if (kind === 'summary' || kind === 'write' || kind === 'record') return { kind }
  if (kind === 'taptest') return { kind: 'tapTest' }
  if (kind === 'piece' && piece) return { kind, piece: pieceId(piece) }
  const [, from, to] = /^(\d+(?:_\d+)?)-(\d+(?:_\d+)?)$/.exec(stretch ?? '') ?? []
  const chosen = handChoices.find((h) => h === hand)
  if (kind === 'practice' && piece && from && to && chosen)
    return { kind, piece: pieceId(piece), place: { from, to, hand: chosen } }
  return { kind: 'pieces' }
}
