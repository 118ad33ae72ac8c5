import type { FolderPort } from '@/app/copyPorts'
import type { Storage } from '@/storage/storage'

/** The folder of the second copy as the app sees it. It comes when the page stands: nothing waits for it. */
export const folderPort = (storage: Storage): FolderPort => {
  const keeping = import('@/storage/folderKeeper').then(({ createFolderKeeper }) =>
    createFolderKeeper(storage, {
      now: () => Date.now(),
      alone: (run) => navigator.locks.request('passagework folder', run),
    }),
  )
  return {
    watch: (see) => {
      let stop: (() => void) | undefined
      let stopped = false
      void keeping.then((keeper) => {
        if (!stopped) stop = keeper.watch(see)
      })
      return () => {
        stopped = true
        stop?.()
      }
    },
    choose: async () => (await keeping).choose(),
    allow: async () => (await keeping).allow(),
    write: async () => (await keeping).write(),
    expect: async (events) => (await keeping).expect(events),
    stop: async () => (await keeping).stop(),
  }
}
