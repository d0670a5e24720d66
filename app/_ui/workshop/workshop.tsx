import { useEffect, useMemo, useRef, useState } from 'react'
import { provideWords } from '#app/catalogue.ts'
import { type Typed, typedFrom } from '../../_http/form.ts'
import { watchCopy } from '../../_offline/tell.ts'
import { type Messages, words } from '../../_words/index.ts'
import { changesSince } from '../changes-since.ts'
import { type AnyCalculation, type BenchData, SYSTEMS } from './calculation.ts'
import { figureText } from './figures.ts'
import { BenchForm } from './form.tsx'
import { BenchFaults, VersionNotice } from './notices.tsx'
import { readForm, withExamples } from './read.ts'
import { BenchResult } from './result.tsx'
import { firstFigure, type Worked, workOut } from './run.ts'
import { switchUnits } from './switch-units.ts'
import { addressOf, type Editions, versionsOf } from './versions.ts'

/** What a page hands to the part of it that also runs in the browser. */
export interface WorkshopProps {
  /** As the address has it. */
  readonly sent: Typed
  readonly data: BenchData
  readonly words: Partial<Messages>
  readonly editions: Editions
  readonly path: string
  /** Where the site stands, for the address on paper. */
  readonly origin: string
}

/** Typing pauses this long before it is worked out anew, so that no key waits for a sum. */
const PAUSE_MS = 150
/** Typing has stopped: what can't be read is a fault now, and who listens is told what came out. */
const TELL_MS = 900

/**
 * Form and result. Drawn by the server as it stands, and followed by a script as somebody types: the same
 * reading, the same sums, the same parts.
 */
export function Workshop({
  calculation,
  sent,
  data,
  words: brought,
  editions,
  path,
  origin,
}: WorkshopProps & { calculation: AnyCalculation }) {
  provideWords(brought)
  const [typed, setTyped] = useState(sent)
  const [live, setLive] = useState(false)
  const worked = useMemo(() => workOut(calculation, typed, data), [calculation, typed, data])
  const { form, shown, faults } = worked
  const versions = useMemo(() => shown && versionsOf(editions, shown.blocks), [shown, editions])
  const address = versions && addressOf(path, form.typed, versions)
  const changes = versions ? changesSince(typed, versions) : null
  const pause = useRef<ReturnType<typeof setTimeout>>(undefined)
  const told = useTold(worked, live)

  useEffect(() => {
    setLive(true)
    // A browser gives the focus that a page asks for; a page that a script drew has to take it.
    document.getElementById('faults')?.focus()
    return () => clearTimeout(pause.current)
  }, [])

  const copy = useRef<ReturnType<typeof watchCopy>>(undefined)
  useEffect(() => {
    copy.current = watchCopy()
    return () => copy.current?.stop()
  }, [])

  useEffect(() => {
    if (!live || typed === sent) return
    const incomplete = `${path}?${new URLSearchParams({ ...typed, in: typed.units ?? 'metric' })}`
    window.history.replaceState(null, '', address ?? incomplete)
    // Without a signal the worker has only what it was told to keep under the new address.
    copy.current?.changed()
  }, [live, typed, sent, address, path])

  /** The form as it stands, with examples in fields that a choice has just brought. */
  const readNow = (element: HTMLFormElement): Typed => {
    const now = typedIn(element)
    const news = calculation.fields(now, data).filter(({ name }) => element.elements.namedItem(name) === null)
    return withExamples(news, now, SYSTEMS.find((one) => one === now.units) ?? 'metric')
  }

  const onTyped = (element: HTMLFormElement, target: EventTarget) => {
    clearTimeout(pause.current)
    if (target instanceof HTMLSelectElement && target.name === 'in') return changeUnits(element, target)
    const writing = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement
    if (!writing || target.type === 'radio' || target.type === 'checkbox') return setTyped(readNow(element))
    pause.current = setTimeout(() => {
      const now = readNow(element)
      const unfinished = readForm(calculation, now, data).faults.some(({ field }) => field === target.name)
      if (unfinished) pause.current = setTimeout(() => setTyped(now), TELL_MS)
      else setTyped(now)
    }, PAUSE_MS)
  }

  const changeUnits = (element: HTMLFormElement, select: HTMLSelectElement) => {
    const now = typedIn(element)
    const to = SYSTEMS.find((one) => one === select.value) ?? 'metric'
    const switched = to === now.units ? now : switchUnits(calculation, now, data, to)
    if (!switched) {
      select.value = now.units ?? 'metric'
      return setTyped(now)
    }
    for (const [name, value] of Object.entries(switched)) {
      const control = element.elements.namedItem(name)
      if (control instanceof HTMLInputElement && control.type === 'text') control.value = value
      if (control instanceof HTMLTextAreaElement) control.value = value
    }
    setTyped(switched)
  }

  return (
    <>
      {changes && address && <VersionNotice changes={changes} today={address} />}
      <div>
        <BenchForm
          path={path}
          worked={worked}
          data={data}
          live={live}
          onTyped={onTyped}
          onSubmit={(element) => {
            clearTimeout(pause.current)
            setTyped(readNow(element))
            setTimeout(() => document.querySelector<HTMLElement>('#faults, #result-head')?.focus())
          }}
        />
        <p className="bench-told screen-only">
          <a className="touch" href={shown ? '#result' : '#faults'}>
            {tellingOf(worked)}
          </a>
        </p>
      </div>
      <p className="hidden-words" role="status">
        {told}
      </p>
      {faults.length > 0 && <BenchFaults faults={faults} live={live} />}
      {shown && versions && address && (
        <BenchResult
          form={form}
          shown={shown}
          data={data}
          versions={versions}
          path={path}
          address={address}
          origin={origin}
        />
      )}
    </>
  )
}

/** What stands in a form; the wish for other units is acted on, not kept. */
function typedIn(element: HTMLFormElement): Typed {
  const entries = [...new FormData(element)].map(([name, value]) => [
    name,
    typeof value === 'string' ? value : '',
  ])
  const { in: _, ...typed } = typedFrom(Object.fromEntries(entries))
  return typed
}

/** What is said of a result once typing has stopped: its first figure, or how much is to be mended. */
function useTold(worked: Worked, live: boolean): string {
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

function tellingOf({ form, shown, faults }: Worked): string {
  const t = words('workOut')
  if (!shown) return t('faults.title', { count: faults.length })
  const figure = firstFigure(shown.blocks)
  if (!figure) return t('result.again')
  return t('result.pair', {
    name: figure.label,
    value: figureText(figure, form.system) ?? t('unknown'),
  })
}
