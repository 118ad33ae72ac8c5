import { useEffect } from 'react'
import type { FolderState } from '@/app/copyPorts'
import { recordsText } from '@/text/records'
import { useApp, useSelected } from './context'
import { phrase } from './phrase'
import { folderWords, keepingWords, reminderWords, savedWords } from './recordWords'

interface SaveTable {
  readonly saveTable: () => Promise<void>
  /** Why it could not be saved. */
  readonly tableProblem: string | undefined
}

/** The record on its way to other places: as a file, into a folder; and what the browser promises. */
export const RecordCopies = ({ saveTable, tableProblem }: SaveTable) => {
  const app = useApp()
  const { saved, since, keeping, folder } = useSelected(app.records.copies, (state) => state)
  useEffect(() => void app.records.lookAtCopies(), [app])
  return (
    <>
      <SaveRecord
        when={savedWords(saved, since)}
        saveTable={saveTable}
        tableProblem={tableProblem}
      />
      <FolderCopy folder={folder} />
      {keeping && (
        <section className="bring" aria-labelledby="keeping">
          <h2 id="keeping">{recordsText.browser.title}</h2>
          <p>{keepingWords(keeping)}</p>
          {!keeping.promised && (
            <button type="button" onClick={() => void app.records.askToKeep()}>
              {recordsText.browser.ask}
            </button>
          )}
        </section>
      )}
    </>
  )
}

const SaveRecord = ({ when, saveTable, tableProblem }: SaveTable & { readonly when: string }) => {
  const app = useApp()
  const words = recordsText.save
  return (
    <section className="bring" aria-labelledby="save">
      <h2 id="save">{words.title}</h2>
      <p>{phrase(words.what((ending) => <i>{ending}</i>))}</p>
      <div className="row">
        <button type="button" onClick={() => void app.records.save()}>
          {words.whole} <kbd>S</kbd>
        </button>
        <button type="button" onClick={() => void saveTable()}>
          {words.table} <kbd>T</kbd>
        </button>
      </div>
      <p className="soft">{when}</p>
      {tableProblem !== undefined && <p role="alert">{words.tableFailed(tableProblem)}</p>}
    </section>
  )
}

const FolderCopy = ({ folder }: { readonly folder: FolderState }) => {
  const { records } = useApp()
  const words = recordsText.folder
  const told = folderWords(folder)
  return (
    <section className="bring" aria-labelledby="folder">
      <h2 id="folder">{words.title}</h2>
      {folder.kind === 'failed' ? (
        <p className="notice" role="alert">
          {told}
        </p>
      ) : (
        <p role="status">{told}</p>
      )}
      <div className="row">
        {folder.kind === 'none' && <Choose word={words.choose} />}
        {folder.kind === 'asks' && (
          <button type="button" className="primary" onClick={() => void records.folder.allow()}>
            {words.allow}
          </button>
        )}
        {(folder.kind === 'ready' || folder.kind === 'failed') && (
          <button type="button" onClick={() => void records.folder.write()}>
            {words.write}
          </button>
        )}
        {folder.kind === 'failed' && <Choose word={words.chooseOther} />}
        {folder.kind !== 'none' && folder.kind !== 'unsupported' && (
          <button type="button" onClick={() => void records.folder.stop()}>
            {words.stop}
          </button>
        )}
      </div>
    </section>
  )
}

const Choose = ({ word }: { readonly word: string }) => {
  const { records } = useApp()
  return (
    <button type="button" onClick={() => void records.folder.choose()}>
      {word}
    </button>
  )
}

/** After a session: what the copies need, and nothing where they need nothing. */
export const CopyReminder = () => {
  const { records, session } = useApp()
  useEffect(() => void records.sessionEnded(session.store.getState().events), [records, session])
  const { saved, since = 0, reminder, folder } = useSelected(records.copies, (state) => state)
  if (folder.kind === 'asks')
    return (
      <p className="row">
        {folderWords(folder)}
        <button type="button" onClick={() => void records.folder.allow()}>
          {recordsText.folder.allow}
        </button>
      </p>
    )
  if (folder.kind === 'failed')
    return (
      <p className="notice" role="alert">
        {folderWords(folder)}
      </p>
    )
  return reminder ? <p role="status">{reminderWords(saved, since)}</p> : null
}
