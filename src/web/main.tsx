import { render } from 'preact';
import './style/tokens.css';
import './style/base.css';
import './style/parts.css';
import './style/frame.css';
import './style/print.css';
import './style/look.ts';
import { restoreSession } from './api/session.ts';
import { App } from './app.tsx';
import { keepShell } from './frame/shell.ts';
import { startLive } from './live/stream.ts';
import { startSender } from './store/sender.ts';

await restoreSession();
startSender();
startLive();
keepShell();
const place = document.getElementById('client');
if (place !== null) render(<App />, place);
