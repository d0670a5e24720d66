import { startTransition, useEffect, useMemo, useRef, useState } from 'react'
import { provideWords } from '#app/catalogue.ts'
import { type Typed, typedFrom } from '../../_http/form.ts'
import { watchCopy } from '../../_offline/tell.ts'
import { type Messages, words } from '../../_words/index.ts'
import { changesSince } from '../changes-since.ts'
import { SYSTEMS } from '../systems.ts'
import type { BenchData } from './brought.ts'
import type { AnyCalculation } from './calculation.ts'
import { BenchForm } from './form.tsx'
import { useLater, waitFor } from './later.ts'
import { BenchFaults, VersionNotice } from './notices.tsx'
import { readForm, withExamples } from './read.ts'
import { BenchResult } from './result.tsx'
import { workOut } from './run.ts'
import { switchUnits } from './switch-units.ts'
import { TELL_MS, tellingOf, useTold } from './told.ts'
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

/**
 * Typing pauses this long before it is worked out anew: longer than between two keys of one figure, so that on an old
 * phone no key waits for ten thousand draws.
 */
const PAUSE_MS = 250

type Props = WorkshopProps & { readonly calculation: AnyCalculation }

/**
 * Form and result. Drawn by the server as it stands, and followed by a script as somebody types: the same
 * reading, the same sums, the same parts.
 */
export function Workshop({ calculation, sent, data, words: brought, editions, path, origin }: Props) {
  provideWords(brought)
  const [typed, setTyped] = useState(sent)
  const [live, setLive] = useState(false)
  if (!live) waitFor(calculation.later, typed)
  const [fetching, follow] = useLater(calculation.later, setTyped)
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
    if (!writing || target.type === 'radio' || target.type === 'checkbox')
      return follow(() => readNow(element))
    pause.current = setTimeout(() => {
      const now = readNow(element)
      const unfinished = readForm(calculation, now, data).faults.some(({ field }) => field === target.name)
      // Drawn in pieces: what is typed meanwhile stands at once.
      const work = () => startTransition(() => follow(() => now))
      if (unfinished) pause.current = setTimeout(work, TELL_MS)
      else work()
    }, PAUSE_MS)
  }

  const changeUnits = (element: HTMLFormElement, select: HTMLSelectElement) => {
    const now = typedIn(element)
    const to = SYSTEMS.find((one) => one === select.value) ?? 'metric'
    const switched = to === now.units ? now : switchUnits(calculation, now, data, to)
    if (!switched) {
      select.value = now.units ?? 'metric'
      return follow(() => now)
    }
    for (const [name, value] of Object.entries(switched)) {
      const control = element.elements.namedItem(name)
      if (control instanceof HTMLInputElement && control.type === 'text') control.value = value
      if (control instanceof HTMLTextAreaElement) control.value = value
    }
    follow(() => switched)
  }

  return (
    <>
      {changes && address && <VersionNotice changes={changes} today={address} />}
      <div>
        <BenchForm
          path={path}
          worked={worked}
          data={data}
          asksSite={fetching === 'missing'}
          onTyped={onTyped}
          onSubmit={(element) => {
            clearTimeout(pause.current)
            follow(() => readNow(element))
            setTimeout(() => document.querySelector<HTMLElement>('#faults, #result-head')?.focus())
          }}
        />
        <p className="bench-told screen-only">
          {fetching ? (
            <span className="touch">{words('workOut')(`fetching.${fetching}`)}</span>
          ) : (
            <a className="touch" href={shown ? '#result' : '#faults'}>
              {tellingOf(worked)}
            </a>
          )}
        </p>
      </div>
      <p className="hidden-words" role="status">
        {fetching ? words('workOut')(`fetching.${fetching}`) : told}
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
