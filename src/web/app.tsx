import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { ErrorBoundary, LocationProvider, Route, Router, useLocation } from 'preact-iso';
import { sessionState } from './api/session.ts';
import { Frame } from './frame/frame.tsx';
import { LinkButton } from './parts/button.tsx';
import { Screen } from './parts/screen.tsx';
import { firstScreen, lazyScreen } from './routing/lazy-screen.ts';
import { homeOf, loadScreensAhead, menuOf, routesOf } from './screens.ts';
import { frameWords } from './words/frame.ts';

// Who is signed in, as nearly everybody is, does not load it.
const SignInScreen = firstScreen(() => import('./sign-in/sign-in.tsx').then((module) => module.SignInScreen));
const OutboxScreen = lazyScreen(() => import('./outbox/outbox.tsx').then((module) => module.OutboxScreen));
const SettingsScreen = lazyScreen(() =>
  import('./settings/settings.tsx').then((module) => module.SettingsScreen),
);

export function App() {
  const state = sessionState.value;
  const ownRole = 'session' in state ? state.session.member.role : null;
  useEffect(() => {
    if (ownRole !== null) void loadScreensAhead(ownRole);
  }, [ownRole]);
  if (state.kind === 'restoring') return null;
  if (state.kind === 'signedOut')
    return (
      <ErrorBoundary>
        <SignInScreen />
      </ErrorBoundary>
    );
  const { role, id } = state.session.member;
  return (
    // A click on anything else than the client's own addresses is the browser's.
    <LocationProvider scope={/^\/(app(\/|$)|$)/}>
      <Frame menu={menuOf(role)}>
        <ErrorBoundary>
          <Router key={`${id} ${role}`}>
            <Route path="/" component={() => <GoTo href={homeOf(role)} />} />
            <Route path="/app" component={() => <GoTo href={homeOf(role)} />} />
            <Route path="/app/outbox" component={OutboxScreen} />
            <Route path="/app/settings" component={SettingsScreen} />
            <Route path="/app/sign-in" component={SignInScreen} />
            {routesOf(role).map(({ path, screen }) => (
              <Route key={path} path={path} component={screen} />
            ))}
            <Route default component={NoSuchScreen} />
          </Router>
        </ErrorBoundary>
      </Frame>
    </LocationProvider>
  );
}

function GoTo({ href }: { href: string }): ComponentChildren {
  const { route } = useLocation();
  useEffect(() => route(href, true), [href, route]);
  return null;
}

function NoSuchScreen() {
  const t = frameWords();
  return (
    <Screen title={t.noSuchScreen}>
      <div>
        <LinkButton href="/">{t.goHome}</LinkButton>
      </div>
    </Screen>
  );
}
