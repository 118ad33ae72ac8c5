/**
 * Something that will be told in one of several sentences: which of them, and the figures in it. It is
 * data: a worker can send it, a store can hold it, and it is put into words of the language that is
 * spoken when somebody reads it.
 *
 *     const lacking = {
 *       header: () => 'the header should go on',
 *       track: ({ bytes }: { readonly bytes: number }) => `the track lacks ${bytes} bytes`,
 *     }
 *     const found: Told<typeof lacking> = { kind: 'track', bytes: 3 }
 *     tell(lacking, found) // 'the track lacks 3 bytes'
 */
export type Told<S> = Sentence<{ [K in keyof S]: Figures<S[K]> }>

type Figures<F> = F extends () => string
  ? unknown
  : F extends (figures: infer A) => string
    ? A
    : never

type Sentence<F, K extends keyof F = keyof F> = {
  readonly [P in K]: { readonly kind: P } & F[P]
}[K]

type Sentences<F> = { readonly [K in keyof F]: (figures: F[K]) => string }

export const tell = <F, K extends keyof F>(sentences: Sentences<F>, told: Sentence<F, K>): string =>
  sentences[told.kind](told)
