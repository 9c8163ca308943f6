// Held by tests/engine/findings/climate/climateHandlers.spec.ts.
import { parentPort } from 'node:worker_threads'
import { openReader } from '#archive/archiveReader.ts'
import { troubleFrom } from '#contract/errors.ts'
import { proposeLogger } from '#exchange/climate/proposeLogger.ts'
import { readLogger } from '#exchange/climate/readLogger.ts'
import { seldomTold, type ThreadMessage } from '../../core/questionThread.ts'
import { answerClimate, answerExposures, type ClimateMemory } from './answerClimate.ts'
import type { ClimateOrder, ClimateReply } from './climateThread.ts'

// The thread that reads files of loggers and works climates out, one question after the other.

if (parentPort === null) throw new TypeError('climateWorker.ts must be started as a worker thread')
const port = parentPort
const memory: ClimateMemory = new Map()
type Told = ThreadMessage<ClimateReply[keyof ClimateReply]>
const send = (message: Told) => port.postMessage(message)

port.on('message', (order: ClimateOrder) => {
  answer(order).then(
    (answer) => send({ kind: 'answer', answer }),
    (thrown) => send({ kind: 'trouble', trouble: troubleFrom(thrown) }),
  )
})

async function answer(order: ClimateOrder): Promise<ClimateReply[keyof ClimateReply]> {
  switch (order.kind) {
    case 'propose':
      return proposeLogger(order.fileName, Buffer.from(order.content), order)
    case 'read':
      return readLogger(order.fileName, Buffer.from(order.content), order.mapping, order.nowS, seldomTold(send))
    case 'of':
    case 'exposures': {
      const archive = openReader(order.opening)
      try {
        return archive.atOneMoment(() =>
          order.kind === 'of' ? answerClimate(archive, order, memory) : answerExposures(archive, memory),
        )
      } finally {
        archive.close()
      }
    }
  }
}
