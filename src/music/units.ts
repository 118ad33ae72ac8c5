/** The units that must not be mixed. Each brand is made here and nowhere else. */
declare const unit: unique symbol

/** Milliseconds on the clock of the key events (`performance.now()` in the page). */
export type Ms = number & { readonly [unit]: 'ms' }
/** Exact score time: a whole number of ticks, `ticksPerQuarter` of the score to a quarter note. */
export type Tick = number & { readonly [unit]: 'tick' }
/** A MIDI key number, 0 to 127; middle C is 60, A0 is 21, C8 is 108 (MIDI 1.0). */
export type Key = number & { readonly [unit]: 'key' }
/** Quarter notes a minute. */
export type Tempo = number & { readonly [unit]: 'tempo' }
/** Names a note inside its piece; made of its place and key, so that it survives re-import. */
export type NoteId = string & { readonly [unit]: 'noteId' }
/** Names a piece by a hash of its musical content. */
export type PieceId = string & { readonly [unit]: 'pieceId' }
/** Names a chunk in one form: piece, place, hand. */
export type ChunkId = string & { readonly [unit]: 'chunkId' }

export const ms = (n: number): Ms => n as Ms
export const tick = (n: number): Tick => n as Tick
export const key = (n: number): Key => n as Key
export const tempo = (n: number): Tempo => n as Tempo
export const noteId = (s: string): NoteId => s as NoteId
export const pieceId = (s: string): PieceId => s as PieceId
export const chunkId = (s: string): ChunkId => s as ChunkId

/** How long a quarter note lasts at a tempo: 120 -> 500 ms. */
export const quarterMs = (t: Tempo): Ms => ms(60_000 / t)
