import type { Device } from './devices'
import { createHolding } from './holding'

/** One stream of several devices. A key that two of them hold is down once. */
export const mergeDevices = (devices: readonly Device[]): Device => ({
  listen: (hear) => {
    const holding = createHolding()
    const stops = [
      holding.listen(hear),
      ...devices.map((device, i) => device.listen((event) => holding.feed(`${i}`, event))),
    ]
    return () => {
      for (const stop of stops) stop()
    }
  },
})
