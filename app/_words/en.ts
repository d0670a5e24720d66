import account from './en/account.json'
import added from './en/added.json'
import common from './en/common.json'
import evidence from './en/evidence.json'
import faults from './en/faults.json'
import find from './en/find.json'
import job from './en/job.json'
import kept from './en/kept.json'
import library from './en/library.json'
import offline from './en/offline.json'
import pages from './en/pages.json'
import photos from './en/photos.json'
import refused from './en/refused.json'
import review from './en/review.json'
import steps from './en/steps.json'
import stepsAnalysis from './en/steps-analysis.json'
import steward from './en/steward.json'
import terms from './en/terms.json'
import workOut from './en/work-out.json'
import workOutCarbon from './en/work-out-carbon.json'
import workOutCompatibility from './en/work-out-compatibility.json'
import workOutConvertRatio from './en/work-out-convert-ratio.json'
import workOutCure from './en/work-out-cure.json'
import workOutDrawings from './en/work-out-drawings.json'
import workOutHydraulicity from './en/work-out-hydraulicity.json'
import workOutLimeCertificate from './en/work-out-lime-certificate.json'
import workOutSample from './en/work-out-sample.json'
import workOutSand from './en/work-out-sand.json'
import workOutSieve from './en/work-out-sieve.json'
import workOutSlaking from './en/work-out-slaking.json'
import workOutSubsoil from './en/work-out-subsoil.json'
import write from './en/write.json'

/** Each file of the catalogue is a namespace of its own name. */
export const english = {
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
export type Messages = typeof english
