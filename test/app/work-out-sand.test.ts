import { expect, it } from 'vitest'
import { speaking } from '#app/asked.ts'
import { benchData } from '../../app/_ui/workshop/data.ts'
import { workOut } from '../../app/_ui/workshop/run.ts'
import { sand } from '../../app/work-out/sand/calculation.ts'

const faults = () =>
  workOut(sand, { show: 'fields', 'sand-ml': '1000', 'water-ml': '1000' }, benchData(sand)).faults.map(
    ({ sentence }) => sentence,
  )

it('/work-out/sand refuses as much water as sand, and says that less would do', () => {
  expect(faults()).toEqual([expect.stringMatching(/ Give less than 1000\smL\.$/)])
  expect(speaking('es', faults)).toEqual([expect.stringMatching(/ Dar menos de 1000\smL\.$/)])
})
