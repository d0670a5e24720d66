import { describe, expect, it } from 'vitest'
import { readChoices, readStep } from '../../app/write/read-form.ts'

const post = (fields: Record<string, string>) => {
  const form = new FormData()
  for (const [name, value] of Object.entries(fields)) form.set(name, value)
  return form
}

describe('readStep(form)', () => {
  const page = {
    ':was': JSON.stringify({ title: 'North', summary: '', 'entry.slug': '' }),
    ':proposed': JSON.stringify({ summary: 'Pointing of rubble.', 'entry.slug': 'north' }),
  }
  const untouched = { title: 'North', summary: 'Pointing of rubble.', 'entry.slug': 'north' }

  it('takes what a page proposed for nobody’s text, until it is sent', () => {
    expect(readStep(post({ ...page, ...untouched, ':do': 'stay' })).changes).toEqual({})
    expect(readStep(post({ ...page, ...untouched, ':do': 'send' })).changes).toEqual({
      summary: { was: '', is: 'Pointing of rubble.' },
    })
  })

  it('takes what was typed over it', () => {
    const typed = { ...untouched, 'entry.slug': 'north-gable' }
    expect(readStep(post({ ...page, ...typed })).changes).toEqual({
      'entry.slug': { was: '', is: 'north-gable' },
    })
  })
})

describe('readChoices(form)', () => {
  const seen = { title: ['North', 'South'], summary: ['Dry.', 'Damp.', ''], joint: ['sound', 'worn'] }
  const chosen = (choices: Record<string, string>) =>
    readChoices(post({ ':seen': JSON.stringify(seen), ...choices }))

  it('tells each choice as the text that was shown, and nothing of what was left open', () => {
    expect(chosen({ title: '0', summary: 'all', other: '0' })).toEqual({
      title: { text: 'South', seen: seen.title },
      summary: { text: 'Dry.\nDamp.', seen: seen.summary },
    })
    expect(chosen({ title: 'stands', joint: '7' })).toEqual({ title: { text: 'North', seen: seen.title } })
    expect(readChoices(post({ ':seen': 'no list', title: '0' }))).toEqual({})
  })
})
