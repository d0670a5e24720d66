import type { CertificateRow } from '#lib/mortar/certificate.ts'
import { withUnit } from '../../_ui/quantity.tsx'
import type { Shown } from '../../_ui/workshop/shown.ts'
import { formatNumber } from '../../_words/format.ts'
import { words } from '../../_words/index.ts'

/** Each result beside its limit, with what was found and how well the limit is known. */
export function show(rows: readonly CertificateRow[]): Shown {
  const t = words('workOut')
  return {
    steps: [],
    blocks: [
      { kind: 'notice', tone: 'caution', text: t('limeCertificate.noVerdict') },
      {
        kind: 'table',
        name: 'items',
        title: t('limeCertificate.table'),
        stack: true,
        columns: [
          { key: 'item', head: t('limeCertificate.item') },
          { key: 'result', head: t('limeCertificate.result') },
          { key: 'limit', head: t('limeCertificate.limit'), words: true },
          { key: 'found', head: t('limeCertificate.found'), words: true },
        ],
        rows: rows.map((row) => ({
          name: `${row.item}-${row.kind}`,
          cells: {
            item: t('limeCertificate.ofKind', {
              item: t(`limeCertificate.items.${row.item}`),
              kind: t(`limeCertificate.kinds.${row.kind}`),
            }),
            result:
              row.value === null
                ? t('limeCertificate.outcomes.not-given')
                : { value: row.value, unit: row.unit, bench: true },
            limit: limitText(row),
            found: foundText(row),
          },
        })),
      },
      {
        kind: 'note',
        text: t('limeCertificate.sourceNote'),
        link: { href: '/sources/en-459-1', words: t('limeCertificate.source') },
      },
    ],
  }
}

function limitText({ min, max, unit, basis }: CertificateRow): string {
  const t = words('workOut')
  const print = (value: number) => withUnit(formatNumber(value), unit)
  const limit =
    min !== null && max !== null
      ? t('limeCertificate.between', { min: formatNumber(min), max: print(max) })
      : min !== null
        ? t('limeCertificate.atLeast', { limit: print(min) })
        : max !== null
          ? t('limeCertificate.atMost', { limit: print(max) })
          : ''
  return t('limeCertificate.known', { limit, basis: words('terms')(`basis.${basis}.label`) })
}

function foundText({ outcome, unsure }: CertificateRow): string {
  const t = words('workOut')
  return outcome === 'not-verified' && unsure !== null
    ? t(`limeCertificate.unsure.${unsure}`)
    : t(`limeCertificate.outcomes.${outcome}`)
}
