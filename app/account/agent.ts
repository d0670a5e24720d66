import { words } from '../_words/index.ts'

/** The first words of what a browser says it is that tell it apart, without its numbers; unknown ones are shortened. */
export function agentWords(agent: string): string {
  const system = /\(([^;)]+)/.exec(agent)?.[1]?.trim()
  const names = [...agent.matchAll(/\b([A-Za-z]+)\/[\d.]+/g)].map(([, name = '']) => name)
  const name = names.filter((one) => !COMMON.has(one)).at(0) ?? names.at(-1) ?? agent.slice(0, 40)
  if (agent === '') return words('account')('sessions.unknown')
  return system === undefined ? name : words('account')('sessions.agent', { name, system })
}

/** What nearly every browser says of itself. */
const COMMON = new Set(['Mozilla', 'AppleWebKit', 'Gecko', 'Version', 'Mobile', 'Safari'])
