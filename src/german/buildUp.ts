import type { BuildUpText } from '@/text/buildUp'

export const buildUp: BuildUpText = {}
