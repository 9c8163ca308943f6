import { forbiddenRules } from '#tests/architecture/importRules.ts'

/** @type {import('dependency-cruiser').IConfiguration} */
export default {
  forbidden: forbiddenRules(),
  options: {
    // Type imports are dependencies too.
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.mjs', '.js', '.cjs', '.json', '.css', '.d.ts'],
    },
  },
}
