import { mayPass, ROUTES } from '#lib/access/doors.ts'
import { exportAccount } from '#lib/workflow/account-export.ts'
import { currentActor, ownAccount } from '../../_http/actor.ts'
import { answerProblem, problemOf } from '../../_http/problem.ts'
import { isOurs } from '../../_http/same-origin.ts'
import { words } from '../../_words/index.ts'

/** Everything the site keeps of whoever asks, as one file. */
export async function GET(request: Request): Promise<Response> {
  if (!mayPass(await currentActor(), ROUTES['/account/export']) || !isOurs(request))
    return answerProblem(problemOf(403, words('account')('form.signInFirst')))
  const { own } = await ownAccount()
  const encoder = new TextEncoder()
  const pieces = exportAccount(own)
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const { done, value } = await pieces.next()
      if (done === true) controller.close()
      else controller.enqueue(encoder.encode(value))
    },
    cancel: async () => {
      await pieces.return(undefined)
    },
  })
  return new Response(body, {
    headers: {
      'Content-Type': 'application/json; charset=utf-8',
      'Content-Disposition': 'attachment; filename="putlog-account.json"',
      'Cache-Control': 'private, no-store',
    },
  })
}
