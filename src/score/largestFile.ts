import type { ReadProblem } from './readProblem'

/** 32 MB: a whole evening of piano music takes less than one. */
export const largestFile = 32 * 1024 * 1024

/** A file, or one that is packed in it, of so many bytes. */
export const tooLarge = (
  bytes: number,
  kind: 'tooLarge' | 'tooLargeUnpacked' = 'tooLarge',
): ReadProblem => ({ kind, size: megabytes(bytes), most: megabytes(largestFile) })

const megabytes = (bytes: number): number => Math.ceil(bytes / (1024 * 1024))
