import type { Device } from './devices'
import { createHolding } from './holding'

/** One stream of several devices. A key that two of them hold is down once. */
export const mergeDevices = (devices: readonly Device[]): Device => ({
  listen: (hear) => {
    const holding = createHolding()
    const stopHearing = holding.listen(hear)
    const stops = devices.map((device, i) => device.listen((event) => holding.feed(`${i}`, event)))
    return () => {
      for (const stop of stops) stop()
      holding.letGoAll()
      stopHearing()
    }
  },
})
