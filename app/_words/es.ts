import type { Messages } from './en.ts'
import account from './es/account.json'
import added from './es/added.json'
import common from './es/common.json'
import evidence from './es/evidence.json'
import faults from './es/faults.json'
import find from './es/find.json'
import job from './es/job.json'
import kept from './es/kept.json'
import library from './es/library.json'
import offline from './es/offline.json'
import pages from './es/pages.json'
import photos from './es/photos.json'
import refused from './es/refused.json'
import review from './es/review.json'
import steps from './es/steps.json'
import stepsAnalysis from './es/steps-analysis.json'
import steward from './es/steward.json'
import terms from './es/terms.json'
import workOut from './es/work-out.json'
import workOutCarbon from './es/work-out-carbon.json'
import workOutCompatibility from './es/work-out-compatibility.json'
import workOutConvertRatio from './es/work-out-convert-ratio.json'
import workOutCure from './es/work-out-cure.json'
import workOutDrawings from './es/work-out-drawings.json'
import workOutHydraulicity from './es/work-out-hydraulicity.json'
import workOutLimeCertificate from './es/work-out-lime-certificate.json'
import workOutSample from './es/work-out-sample.json'
import workOutSand from './es/work-out-sand.json'
import workOutSieve from './es/work-out-sieve.json'
import workOutSlaking from './es/work-out-slaking.json'
import workOutSubsoil from './es/work-out-subsoil.json'
import write from './es/write.json'

/** The same in Spanish; the compiler asks for each key that English has. */
export const spanish: Messages = {
  account,
  added,
  common,
  evidence,
  faults,
  find,
  job,
  kept,
  library,
  offline,
  pages,
  photos,
  refused,
  review,
  steps: { ...steps, analysis: stepsAnalysis },
  steward,
  terms,
  workOut: {
    ...workOut,
    carbon: workOutCarbon,
    compatibility: workOutCompatibility,
    convertRatio: workOutConvertRatio,
    cure: workOutCure,
    drawings: workOutDrawings,
    hydraulicity: workOutHydraulicity,
    limeCertificate: workOutLimeCertificate,
    sample: workOutSample,
    sand: workOutSand,
    slaking: workOutSlaking,
    sieve: workOutSieve,
    subsoil: workOutSubsoil,
  },
  write,
}
