import '@fontsource/barlow/latin-400.css'
import '@fontsource/barlow/latin-600.css'
import '@fontsource/barlow/latin-ext-400.css'
import '@fontsource/barlow/latin-ext-600.css'
import '@fontsource/courier-prime/latin-400.css'
import '@fontsource/courier-prime/latin-400-italic.css'
import '@fontsource/courier-prime/latin-700.css'
import '@fontsource/source-serif-4/latin-400.css'
import '@fontsource/source-serif-4/latin-400-italic.css'
import '@fontsource/source-serif-4/latin-600.css'
import './style/bench.css'
import './style/dialogs.css'
import './style/papers.css'
import './style/slip.css'
import './style/sheet.css'
import './style/turning.css'
import './style/margin.css'
import './style/starter.css'
import './style/model.css'
import './style/small.css'
import './style/print.css'
import { createRoot } from 'react-dom/client'
import { Bench } from './bench/bench.tsx'
import { WhenFallen } from './bench/when-fallen.tsx'
import { keepOffline } from './keep-offline.ts'

createRoot(document.getElementById('bench')!).render(
  <WhenFallen>
    <Bench />
  </WhenFallen>,
)
keepOffline()
