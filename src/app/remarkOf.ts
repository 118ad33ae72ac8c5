import { samplesText } from '@/text/samples'
import type { Listed } from './library'

/** What stands beside the title: of a piece that comes with the program what it is like, else the name of its file. */
export const remarkOf = ({ from, fileName }: Pick<Listed, 'from' | 'fileName'>): string =>
  from === 'sample' && isDescribed(fileName) ? samplesText[fileName] : fileName

const isDescribed = (fileName: string): fileName is keyof typeof samplesText =>
  fileName in samplesText
