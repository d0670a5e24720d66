/** One thing that can be chosen by typing any of its names. */
export interface Choice {
  readonly id: string
  /** What the field shows once it is chosen. */
  readonly label: string
  /** Other names that find it: synonyms, names in other languages. */
  readonly also?: readonly string[]
}

/** Things to choose from by typing, offered as a list that works without JavaScript. */
export interface Pick {
  readonly choices: readonly Choice[]
  /** Id of what a name names; undefined for no name, or for one that two things share and none has as its label. */
  readonly find: (name: string) => string | undefined
  /** What the field shows for an id. */
  readonly show: (id: string) => string
  /** Labels of what somebody may have meant who typed no name: at most three, the nearest first. */
  readonly near: (name: string) => readonly string[]
}

/** Small letters without accents, runs of anything else as one space. */
export const folded = (text: string): string =>
  text
    .normalize('NFD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .replace(/[\s,;:.()]+/g, ' ')
    .trim()

/** Makes the list; a label wins over other names, and an id is a name too. */
export function pickFrom(choices: readonly Choice[]): Pick {
  const byLabel = new Map<string, string | null>()
  const byName = new Map<string, string | null>()
  const labels = new Map<string, string>()
  const add = (map: Map<string, string | null>, name: string, id: string) => {
    const known = map.get(folded(name))
    map.set(folded(name), known === undefined || known === id ? id : null)
  }
  for (const { id, label, also = [] } of choices) {
    labels.set(id, label)
    add(byLabel, label, id)
    for (const name of also) add(byName, name, id)
  }
  const find = (name: string) =>
    labels.has(name) ? name : (byLabel.get(folded(name)) ?? byName.get(folded(name)) ?? undefined)
  const show = (id: string) => {
    const label = labels.get(id)
    return label !== undefined && byLabel.get(folded(label)) === id ? label : id
  }
  return { choices, find, show, near: (name) => nearIn(choices, folded(name)) }
}

const NEAR = 3
/** Letters that a beginning must share to be worth a guess. */
const BEGINNING = 4

/** Things that share the name; those whose name stands in what was typed, the longest first; those that begin alike. */
function nearIn(choices: readonly Choice[], typed: string): string[] {
  const rank = (name: string): number => {
    if (name === typed) return Infinity
    if (` ${typed} `.includes(` ${name} `)) return name.length
    return typed.length >= BEGINNING && ` ${name}`.includes(` ${typed.slice(0, BEGINNING)}`) ? 0 : -1
  }
  return choices
    .map(({ label, also = [] }) => ({ label, rank: Math.max(...[label, ...also].map(folded).map(rank)) }))
    .filter((one) => one.rank >= 0)
    .sort((a, b) => b.rank - a.rank)
    .slice(0, NEAR)
    .map(({ label }) => label)
}
