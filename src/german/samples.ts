import type { SamplesText } from '@/text/samples'

export const samples: SamplesText = {
  'morning-at-the-mill.mid': 'Ein Lauf der rechten Hand über ruhigen Quinten und Terzen.',
  'swallows-under-the-eaves.mid': 'Ein langsamer Walzer in Terzen, der mit einem Auftakt beginnt.',
  'clogs-on-the-stairs.mid':
    'Tonwiederholungen, die gleichmäßig bleiben, und Akkorde, deren Töne zusammen kommen müssen.',
  'ferry-at-dusk.mid':
    'Gebrochene Akkorde mit weiten Sprüngen für die linke Hand; vier Takte lang wird es langsamer.',
  'wind-across-the-weir.mid':
    'Drei in der rechten Hand gegen zwei in der linken, vom ersten bis zum letzten Takt.',
}
