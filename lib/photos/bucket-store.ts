import { createReadStream } from 'node:fs'
import { rm, stat } from 'node:fs/promises'
import type { Readable } from 'node:stream'
import {
  DeleteObjectCommand,
  GetObjectCommand,
  ListObjectsV2Command,
  NoSuchKey,
  PutObjectCommand,
  S3Client,
} from '@aws-sdk/client-s3'
import type { PhotoBucket } from '#lib/env.ts'
import type { PhotoStore } from './store.ts'

/** A store in a bucket of any server that speaks S3. */
export function bucketStore({ bucket, endpoint, region, keys }: PhotoBucket): PhotoStore {
  const client = new S3Client({
    region,
    ...(endpoint !== undefined && { endpoint, forcePathStyle: true }),
    ...(keys !== undefined && { credentials: keys }),
    // Newer checksums are sent only where the server asks: many that speak S3 know none of them.
    requestChecksumCalculation: 'WHEN_REQUIRED',
    responseChecksumValidation: 'WHEN_REQUIRED',
  })
  return {
    async put(name, path) {
      const { size } = await stat(path)
      const Body = createReadStream(path)
      await client.send(new PutObjectCommand({ Bucket: bucket, Key: name, Body, ContentLength: size }))
      await rm(path)
    },
    async get(name) {
      try {
        const { Body, ContentLength } = await client.send(new GetObjectCommand({ Bucket: bucket, Key: name }))
        return Body === undefined ? null : { stream: Body as Readable, bytes: ContentLength ?? 0 }
      } catch (error) {
        if (error instanceof NoSuchKey) return null
        throw error
      }
    },
    async removeAll(prefix) {
      for (;;) {
        const { Contents = [] } = await client.send(
          new ListObjectsV2Command({ Bucket: bucket, Prefix: prefix }),
        )
        if (Contents.length === 0) return
        for (const { Key } of Contents) await client.send(new DeleteObjectCommand({ Bucket: bucket, Key }))
      }
    },
  }
}
