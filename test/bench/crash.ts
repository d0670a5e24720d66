import { crashRounds } from '#test/support/crash.ts'

/** `npx tsx test/bench/crash.ts 200 7`: that many kills from that seed, one line each. */
const [rounds = '20', seed = '1'] = process.argv.slice(2)
const report = await crashRounds(Number(rounds), Number(seed), console.log)
console.log(report)
process.exitCode = report.lost.length + report.doubled.length === 0 ? 0 : 1
