import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { actorOf } from '#lib/auth/current.ts'
import { redeemLink } from '#lib/auth/links.ts'
import { secretDigest } from '#lib/auth/random.ts'
import { sendConfirmLink, sendSignInLink } from '#lib/auth/send-link.ts'
import { openSession } from '#lib/auth/sign-in.ts'
import { db } from '#lib/db/client.ts'
import { type SignedIn, sessionByDigest } from '#lib/db/sessions.ts'
import { submit } from '#lib/workflow/submit.ts'
import { makeSubmission, REFERENCES } from '../support/make.ts'
import { makePerson, type Person } from '../support/people.ts'
import { bodyOf, startSmtp } from '../support/smtp.ts'

const folder = mkdtempSync(join(tmpdir(), 'putlog-link-'))
let smtp: Awaited<ReturnType<typeof startSmtp>>
beforeAll(async () => {
  process.env.DATA_DIR = folder
  process.env.SITE_URL = 'https://mortars.example'
  smtp = await startSmtp()
  smtp.setUp()
})
afterAll(async () => {
  smtp.takeAway()
  await smtp.stop()
  delete process.env.DATA_DIR
  delete process.env.SITE_URL
  rmSync(folder, { recursive: true })
})

const from = { address: '192.0.2.1', agent: 'A test' }
const words = (link: string) => ({ subject: 'Your link', text: `Open it:\n\n${link}\n` })
const sessionWith = async (sid: string) => (await sessionByDigest(secretDigest(sid))) as SignedIn
const signedIn = async (person: Person) => sessionWith(await openSession(db(), person, 'password', from))
/** Who the last mail went to, and the secret in its link. */
function lastMail(): { to: readonly string[]; secret: string } {
  const [mail] = smtp.got.splice(0)
  if (mail === undefined) throw new Error('no mail came')
  const link = /https:\/\/mortars\.example\/sign-in\/link\?secret=([\w-]{43})\b/.exec(bodyOf(mail))
  return { to: mail.to, secret: link?.[1] ?? '' }
}

describe('links by mail', () => {
  it('go to known and unknown addresses alike, and the answer tells nothing', async () => {
    const { email } = await makePerson()
    for (const address of [email, 'unknown@people.example']) {
      expect(await sendSignInLink(address, from, words)).toBeUndefined()
      const { to, secret } = lastMail()
      expect(to).toEqual([address])
      const sid = await redeemLink(secret, { name: 'New' }, null, from)
      expect(await sessionWith(sid ?? '')).toMatchObject({ email: address, how: 'link' })
    }
  })

  it('are sent to one address at most five times an hour', async () => {
    const send = () => sendSignInLink('often@people.example', from, words)
    for (let sent = 0; sent < 5; sent += 1) await send()
    await expect(send()).rejects.toMatchObject({ code: 'too-many' })
    expect(smtp.got.splice(0)).toHaveLength(5)
  })

  it('say so when the mail did not go out', async () => {
    smtp.refuse(true)
    await expect(sendSignInLink('refused@people.example', from, words)).rejects.toMatchObject({
      code: 'unavailable',
    })
    smtp.refuse(false)
    vi.mocked(console.error).mockClear()
  })

  it('confirm an address, and only then can its owner submit', async () => {
    const mason = await makePerson({ confirmed: false })
    const session = await signedIn(mason)
    const write = () => makeSubmission({ slug: 'confirmed' })
    await expect(submit(actorOf(session), write(), REFERENCES)).rejects.toMatchObject({
      code: 'forbidden',
      message: expect.stringMatching(/^Confirm your address first/),
    })
    await sendConfirmLink(session, mason.email, from, words)
    expect(await redeemLink(lastMail().secret, {}, session, from)).toBeNull()
    const again = await signedIn(mason)
    expect((await submit(actorOf(again), write(), REFERENCES)).number).toBe(1)
  })
})
