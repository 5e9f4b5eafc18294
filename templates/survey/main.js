/* Begins: what was kept, the phone's own back key, the engine. */
function begin() {
    document.title = say('title');
    document.getElementById('strip').setAttribute('aria-label', say('strip'));
    document.getElementById('panel').setAttribute('aria-label', say('question'));
    document.getElementById('bar').setAttribute('aria-label', say('actions'));
    loadKept();
    history.pushState(null, '');
    addEventListener('popstate', () => {
        if (state.at.card === 'start') {
            history.back();
            return;
        }
        history.pushState(null, '');
        goBack();
    });
    addEventListener('beforeunload', (event) => {
        if (!keepAllowed && state.rev > 0 && state.sent?.rev !== state.rev) {
            event.preventDefault();
        }
    });
    draw(true);
    beginEngine().then(() => {
        planSoon();
        draw();
    });
}
begin();
