import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { sendMail, sendsMail } from '#lib/mail/send-mail.ts'
import { bodyOf, startSmtp } from '../support/smtp.ts'

let smtp: Awaited<ReturnType<typeof startSmtp>>
beforeAll(async () => {
  smtp = await startSmtp()
})
afterAll(() => smtp.stop())
afterEach(() => {
  smtp.takeAway()
  smtp.refuse(false)
})

const mail = { to: 'ana@people.example', subject: 'A visit is due', text: 'Barn wall – põhjasein, 5 years.' }

describe('sendMail(mail)', () => {
  it('hands the mail to the server, letters of every language whole', async () => {
    smtp.setUp()
    expect(sendsMail()).toBe(true)
    expect(await sendMail(mail)).toBe(true)
    const [one] = smtp.got.splice(0)
    expect(one).toMatchObject({ from: 'site@mortars.example', to: ['ana@people.example'] })
    expect(one?.text).toMatch(/^Subject: A visit is due\r?$/m)
    expect(one && bodyOf(one)).toContain(mail.text)
  })

  it('sends nothing where no server is set, and says so', async () => {
    expect(sendsMail()).toBe(false)
    expect(await sendMail(mail)).toBe(false)
    expect(smtp.got).toEqual([])
  })

  it('says so when the server takes it not, without the address in the log', async () => {
    smtp.setUp()
    smtp.refuse(true)
    expect(await sendMail(mail)).toBe(false)
    smtp.setUp('site:wrong')
    expect(await sendMail(mail)).toBe(false)
    const said = vi.mocked(console.error).mock.calls.flat().join('\n')
    expect(said).toMatch(/Mail was not sent/)
    expect(said).not.toMatch(/ana@people|hush|wrong/)
    vi.mocked(console.error).mockClear()
  })

  it('puts no header of somebody else’s making into the mail', async () => {
    smtp.setUp()
    expect(await sendMail({ ...mail, subject: 'Due\r\nBcc: everybody@people.example' })).toBe(true)
    const [one] = smtp.got.splice(0)
    expect(one?.to).toEqual(['ana@people.example'])
    expect(one?.text).not.toMatch(/^Bcc:/m)
  })
})
