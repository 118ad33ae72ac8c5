import type { DevicesText } from '@/text/devices'

export const devices: DevicesText = {}
