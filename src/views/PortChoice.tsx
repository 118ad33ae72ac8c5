import type { MidiInput } from '@/app/ports'
import { optionsText } from '@/text/options'
import { Choice } from './Choice'

/** One of the instruments that are there or were there; the chosen one is listed even where it is away. */
export const PortChoice = ({
  label,
  ports,
  chosen,
  otherwise,
  onChange,
}: {
  readonly label: string
  readonly ports: readonly MidiInput[]
  readonly chosen: { readonly id: string; readonly name: string }
  /** What stands for none of them. */
  readonly otherwise: readonly [id: string, word: string]
  readonly onChange: (id: string, name: string) => void
}) => {
  const isListed = chosen.id === otherwise[0] || ports.some(({ id }) => id === chosen.id)
  return (
    <Choice
      label={label}
      value={chosen.id}
      among={[
        otherwise,
        ...ports.map((port) => [port.id, portWord(port)] as const),
        ...(isListed ? [] : [[chosen.id, optionsText.beside.absent(chosen.name)] as const]),
      ]}
      onChange={(id) => onChange(id, ports.find((port) => port.id === id)?.name ?? '')}
    />
  )
}

const portWord = ({ name, standing }: MidiInput): string =>
  standing === 'there' ? name : optionsText.beside[standing](name)
