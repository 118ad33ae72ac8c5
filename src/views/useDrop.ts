import { useEffect, useState } from 'react'
import type { App } from '@/app/app'
import type { ChosenFile } from '@/app/library'
import { useApp } from './context'

/** Takes files in one after another; the last one that can be read is opened. */
export const addFiles = async (app: App, files: readonly ChosenFile[]): Promise<void> => {
  for (const file of files) await app.addFile(file)
}

/** On the page of students what is dropped is a record of theirs; anywhere else a piece. */
const takeDropped = async (app: App, files: readonly ChosenFile[]): Promise<void> => {
  if (app.screen.getState().kind !== 'students') return addFiles(app, files)
  const { incoming } = await app.lessons.openStudents()
  await incoming.look(files)
}

/** A file of the browser, unread. */
export const chosenFile = (file: File): ChosenFile => ({
  name: file.name,
  size: file.size,
  read: async () => new Uint8Array(await file.arrayBuffer()),
})

/**
 * Takes in files dropped anywhere, on whatever screen: else the browser would leave the page for the
 * file. Tells whether one is held over the page.
 */
export const useDrop = (): boolean => {
  const app = useApp()
  const [over, setOver] = useState(false)
  useEffect(() => {
    const drag = (event: DragEvent): void => {
      event.preventDefault()
      setOver(true)
    }
    const leave = (event: DragEvent): void => {
      if (event.relatedTarget === null) setOver(false)
    }
    const drop = (event: DragEvent): void => {
      event.preventDefault()
      setOver(false)
      void takeDropped(app, Array.from(event.dataTransfer?.files ?? [], chosenFile))
    }
    window.addEventListener('dragover', drag)
    window.addEventListener('dragleave', leave)
    window.addEventListener('drop', drop)
    return () => {
      window.removeEventListener('dragover', drag)
      window.removeEventListener('dragleave', leave)
      window.removeEventListener('drop', drop)
    }
  }, [app])
  return over
}
