import { takeProgramLock } from '#archive/core/programLock.ts'

// Takes the lock of the archive named on its command line, says so, and holds it until it is killed.

takeProgramLock(process.argv[2] ?? '')
process.stdout.write('held\n')
setInterval(() => {}, 1000)
