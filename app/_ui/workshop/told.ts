import { useEffect, useRef, useState } from 'react'
import { words } from '../../_words/index.ts'
import { figureText } from './figures.ts'
import { firstFigure, type Worked } from './run.ts'

/** Typing has stopped: what can't be read is a fault now, and who listens is told what came out. */
export const TELL_MS = 900

/** What is said of a result once typing has stopped: its first figure, or how much is to be mended. */
export function useTold(worked: Worked, live: boolean): string {
  const [told, setTold] = useState('')
  const first = useRef(true)
  useEffect(() => {
    if (!live) return
    if (first.current) {
      first.current = false
      return
    }
    const later = setTimeout(() => setTold(tellingOf(worked)), TELL_MS)
    return () => clearTimeout(later)
  }, [worked, live])
  return told
}

export function tellingOf({ form, shown, faults }: Worked): string {
  const t = words('workOut')
  if (!shown) return t('faults.title', { count: faults.length })
  const figure = firstFigure(shown.blocks)
  if (!figure) return t('result.again')
  return t('result.pair', {
    name: figure.label,
    value: figureText(figure, form.system) ?? t('unknown'),
  })
}
