import { type CertificateRow, checkCertificate } from '#lib/mortar/certificate.ts'
import { LIME_CLASSES } from '#lib/mortar/certificate-limits.ts'
import type { Calculation } from '../../_ui/workshop/calculation.ts'
import { faultsAt } from '../../_ui/workshop/faults-at.ts'
import { fieldsOf, itemsAsked, REACTIVITIES, SIZES } from './fields.ts'
import { show } from './show.ts'

/** A lime's test certificate against the single-result limits of its class, item by item. */
export const limeCertificate: Calculation<readonly CertificateRow[]> = {
  name: 'lime-certificate',
  sources: ['en-459-1'],
  fields: fieldsOf,
  work(given) {
    const lime = given.choice('class', LIME_CLASSES)
    const reactivity = given.has('reactivity-class')
      ? given.choice('reactivity-class', ['', ...REACTIVITIES])
      : ''
    const size = given.has('size-class') ? given.choice('size-class', ['', ...SIZES]) : ''
    const items = itemsAsked(lime, reactivity, size)
    const outcome = checkCertificate({
      class: lime,
      ...(reactivity !== '' && { reactivityClass: reactivity }),
      ...(size !== '' && { sizeClass: size }),
      results: Object.fromEntries(items.map(({ item, name }) => [item, given.amount(name)?.typical])),
    })
    return faultsAt(outcome, [[/^results$/, items[0]?.name ?? 'class']])
  },
  show,
}
