import fc from 'fast-check'
import { formatBase64 } from '@/journal/base64'
import { pieceLineVersion, type PieceLine } from '@/journal/pieceLines'
import { handChoices, hands } from '@/music/music'
import { chunkId, key, pieceId } from '@/music/units'

/** Few names and moments, so that lines meet. */
const line = {
  v: fc.constant(pieceLineVersion),
  piece: fc.constantFrom('p1', 'p2', 'p3').map(pieceId),
  atEpochMs: fc.integer({ min: 1, max: 3 }),
}
const quarters = fc.constantFrom('0', '3_2', '16')
const spot = { from: quarters, to: quarters, hand: fc.constantFrom(...handChoices) }

/** Any line on a piece in a saved record. */
export const anyPieceLine: fc.Arbitrary<PieceLine> = fc.oneof(
  fc.record(
    {
      ...line,
      kind: fc.constant('pieceFile' as const),
      title: fc.string({ maxLength: 5 }),
      composer: fc.string({ maxLength: 5 }),
      fileName: fc.constantFrom('a.mid', 'b.musicxml'),
      parts: fc.array(fc.nat(3), { maxLength: 2 }),
      carried: fc.constant([{ from: chunkId('c1'), to: chunkId('c2') }]),
      addedAtEpochMs: fc.nat(5),
      bytes: fc.uint8Array({ maxLength: 4 }).map(formatBase64),
    },
    {
      requiredKeys: [
        'v',
        'kind',
        'piece',
        'atEpochMs',
        'title',
        'fileName',
        'addedAtEpochMs',
        'bytes',
      ],
    },
  ),
  fc.record({
    ...line,
    kind: fc.constant('pieceHands' as const),
    corrections: fc.array(
      fc.record(
        {
          from: quarters,
          to: quarters,
          keys: fc.array(fc.nat(127).map(key), { maxLength: 2 }),
          hand: fc.constantFrom(...hands),
        },
        { requiredKeys: ['from', 'to', 'hand'] },
      ),
      { maxLength: 2 },
    ),
  }),
  fc.record({
    ...line,
    kind: fc.constant('pieceSpots' as const),
    said: fc.array(
      fc.record({ ...spot, word: fc.constantFrom('accepted' as const, 'rejected' as const) }),
      { maxLength: 2 },
    ),
    order: fc.array(fc.record(spot), { maxLength: 2 }),
  }),
)
