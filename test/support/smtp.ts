import { once } from 'node:events'
import type { AddressInfo } from 'node:net'
import { SMTPServer } from 'smtp-server'

/** A mail as the server got it. */
export interface Got {
  readonly from: string
  readonly to: readonly string[]
  /** Headers and body as they came over the line. */
  readonly text: string
}

/** A mail server on this machine that knows one login and keeps what it takes. */
export async function startSmtp() {
  const got: Got[] = []
  const state = { refusing: false }
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onAuth: ({ username, password }, _session, done) =>
      username === 'site' && password === 'hush' ? done(null, { user: 'site' }) : done(new Error('no')),
    onRcptTo: (address, _session, done) =>
      done(state.refusing ? new Error(`no ${address.address} here`) : null),
    onData: (stream, { envelope }, done) => {
      let text = ''
      stream.setEncoding('utf8').on('data', (piece: string) => {
        text += piece
      })
      stream.on('end', () => {
        const from = envelope.mailFrom === false ? '' : envelope.mailFrom.address
        got.push({ from, to: envelope.rcptTo.map(({ address }) => address), text })
        done()
      })
    },
  })
  server.listen(0, '127.0.0.1')
  await once(server.server, 'listening')
  const { port } = server.server.address() as AddressInfo
  return {
    got,
    /** Whether it refuses everybody that mail is for. */
    refuse: (refusing: boolean) => {
      state.refusing = refusing
    },
    /** Points the site's mail at it. */
    setUp: (login = 'site:hush') => {
      process.env.SMTP_URL = `smtp://${login}@127.0.0.1:${port}`
      process.env.MAIL_FROM = 'site@mortars.example'
    },
    /** The site sends no mail again. */
    takeAway: () => {
      delete process.env.SMTP_URL
      delete process.env.MAIL_FROM
    },
    stop: () => new Promise<void>((resolve) => server.close(() => resolve())),
  }
}

/** The body of a mail, its transfer encoding undone. */
export const bodyOf = ({ text }: Got): string =>
  text
    .split(/\r?\n\r?\n/)
    .slice(1)
    .join('\n\n')
    .replace(/=\r?\n/g, '')
    .replace(/(?:=[0-9A-F]{2})+/g, (bytes) => Buffer.from(bytes.replaceAll('=', ''), 'hex').toString('utf8'))
