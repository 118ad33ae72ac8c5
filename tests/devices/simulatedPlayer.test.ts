import { expect, test } from 'vitest'
import { createSimulatedPlayer } from '@/devices/simulatedPlayer'
import type { KeyEvent, Take } from '@/music/keyEvent'
import { key, ms } from '@/music/units'
import { createHandClock } from '../support/handClock'
import { inShort } from '../support/soundStream'

const take: Take = {
  events: [
    { kind: 'down', key: key(60), velocity: 64, at: ms(0) },
    { kind: 'down', key: key(64), velocity: 64, at: ms(10.5) },
    { kind: 'up', key: key(60), at: ms(100) },
    { kind: 'up', key: key(64), at: ms(110) },
  ],
}
const setUp = () => {
  const clock = createHandClock(1000)
  const player = createSimulatedPlayer(clock)
  const heard: KeyEvent[] = []
  player.listen((event) => heard.push(event))
  return { clock, player, heard }
}

test('each event comes at its time, stamped with its planned time', async () => {
  const { clock, player, heard } = setUp()
  const end = player.start(take)
  expect(inShort(heard)).toBe('down60@1000')
  clock.move(10)
  expect(inShort(heard)).toBe('down60@1000')
  clock.move(90)
  expect(inShort(heard)).toBe('down60@1000 down64@1010.5 up60@1100')
  clock.move(10)
  await end
  expect(inShort(heard)).toBe('down60@1000 down64@1010.5 up60@1100 up64@1110')
})

test('a take can be set to begin later, as on the first beat after a count-in', () => {
  const { clock, player, heard } = setUp()
  void player.start(take, ms(3000))
  clock.move(1999)
  expect(heard).toEqual([])
  clock.move(1)
  expect(inShort(heard)).toBe('down60@3000')
})

test('stopped, it lifts its keys and plays no more, and the promise is kept', async () => {
  const { clock, player, heard } = setUp()
  const end = player.start(take)
  clock.move(50)
  player.stop()
  await end
  clock.move(1000)
  expect(inShort(heard)).toBe('down60@1000 down64@1010.5 up60@1050 up64@1050')
})

test('a listener may stop it, or start another take, in the middle of an event', async () => {
  const { clock, player, heard } = setUp()
  let again = true
  player.listen((event) => {
    if (event.kind === 'down' && event.key === 64 && again) {
      again = false
      void player.start(take)
    }
  })
  await Promise.race([player.start(take), Promise.resolve(clock.move(500))])
  expect(heard.filter((e) => e.kind === 'down').map((e) => [e.key, e.at])).toEqual([
    [60, 1000],
    [64, 1010.5],
    [60, 1010.5],
    [64, 1021],
  ])
})

test('a late timer plays all that is due by then, in order, with the planned times', () => {
  const clock = createHandClock()
  const slow = createSimulatedPlayer({
    ...clock,
    setTimer: (run, delayMs) => clock.setTimer(run, delayMs + 105),
  })
  const heard: KeyEvent[] = []
  slow.listen((event) => heard.push(event))
  void slow.start(take)
  clock.move(116)
  expect(inShort(heard)).toBe('down60@0 down64@10.5 up60@100 up64@110')
})

test('an empty take ends at once', async () => {
  const { player, heard } = setUp()
  await player.start({ events: [] })
  expect(heard).toEqual([])
})
