import * as z from 'zod'

// The page's content security policy forbids compiling code at run time. Must be imported before anything else makes a schema.
z.config({ jitless: true })
