'use strict';
/* Every text of the page, so that a second language is a second object. {a} stands for what is put in. What comes from the
 * route language (labels, questions, words and their meanings) and from the engine is not here. */
const WORDS = {
    en: {
        title: 'Survey',
        strip: 'The way so far',
        question: 'The question',
        actions: 'Actions',
        back: 'Back', undo: 'Undo', recheck: 'Recheck', photo: 'Photo', more: 'More', close: 'Close',
        'card-supply': 'Supply', 'card-load': 'Load and device', 'card-far end': 'Far end', 'card-job': 'Customer and job',
        'card-review': 'Review and send', 'card-start': 'Survey of a cable run',
        'short-supply': 'supply', 'short-load': 'load', 'short-far end': 'far end', 'short-job': 'job', 'short-review': 'send', 'short-unsent': 'not sent', 'first-load': 'The file has {n} loads, added up. These questions are about the first; an editor changes the others.',
        segment: 'Segment {n}', 'segment-title': 'Segment {n}: {way}',
        'segment-spoken': 'Segment {n}, {way}, {length}', 'spoken-limits': ', limits', 'spoken-needed': ', an answer is needed',
        'spoken-again': ', measure again',
        'to-ask': '{n} to ask', 'all-asked': 'all asked', 'left-open': '{n} left open',
        'is-assumed': '{label}, not surveyed', assumed: 'assumed {value}', 'not-surveyed': 'nothing assumed', needed: 'needed',
        'in-file': 'as in the file',
        'skip-assumed': 'Not surveyed: assumed {value}', skip: 'Not surveyed: leave it open', 'skip-needed': 'Leave it open: needed before it can be planned',
        'take-out': 'Take it out again: not surveyed',
        'next-way': 'Segment {n} done. What comes next?', 'first-way': 'How does the cable leave?', 'change-way': 'How does the cable run here?',
        'put-behind': 'Put a segment behind it', 'behind-way': 'What comes between?', 'far-end': 'far end', 'far-end-means': 'the way is complete',
        'on-to': 'On to: {card}', 'card-done': '{card}: all asked', 'no-figure': 'no figure',
        'rise-question': 'Does it rise or fall?', 'left-blank': 'left blank', 'still-needed': 'still needed: {what}',
        'rest-as': 'The rest as in {name}', 
        other: 'other', to: 'to', delete: 'Delete', minus: 'minus', figure: 'Figure', enter: 'Enter', times: 'by',
        'type-first': 'Type the figure first, then the unit.',
        level: 'level', 'up-all': 'straight up, all {value}', 'down-all': 'straight down, all {value}', 'up-part': 'up ...', 'down-part': 'down ...',
        'how-far-up': 'How far up?', 'how-far-down': 'How far down?', up: 'up {value}', down: 'down {value}',
        yes: 'yes', no: 'no', today: 'Today', yesterday: 'Yesterday', keep: 'Keep', 'listed-here': 'This is a list in the file. It stays as it is; an editor changes it.',
        'bends-listed': '{n} with angles, as in the file', choose: 'choose',
        verdict: 'Verdict', 'so-far-size': 'SO FAR {length}, {size}: not at the far end', 'so-far-fails': 'SO FAR {length}: would fail {what}',
        'so-far-needs': 'SO FAR {length}: {n} needed', 'so-far-refused': 'SO FAR {length}: {n} refused', 'so-far-planning': 'SO FAR {length}', 'so-far-nothing': 'SO FAR: nothing surveyed yet',
        'not-complete': 'NOT COMPLETE: {n} needed', refused: 'REFUSED: {n} to put right', fails: 'FAIL: {what}', open: 'OPEN: {size}, {n} not checked',
        passes: 'PASS: {size}', 'warned-count': '{n} warned', planning: 'planning ...',
        'no-engine': 'SO FAR {length}: kept, not planned', 'no-engine-end': 'FAR END REACHED, {length}: not planned', 'no-engine-2': 'no planner in this page: the laptop plans',
        'engine-broke': 'The planner stopped: {what}', limits: 'limits: {name}', 'assumed-count': '{n} assumed', 'open-count': '{n} open',
        'go-limits': 'Go to {name}, which limits', 'so-far-means': 'So far means: true of what is entered, not of the job. The far end is not reached.',
        'no-engine-means': 'This page cannot plan. It asks, keeps and saves the route file; wend plan on the laptop decides.',
        'list-needed': 'Needed', 'list-refused': 'To put right', 'list-again': 'Measure again', 'list-unsure': 'Unsure', 'list-assumed': 'Not surveyed, assumed', 'list-open': 'Not checked',
        'list-rest': 'Not to be surveyed', 'list-warned': 'Warned of', 'list-segments': 'Segments, in order', 'list-diagram': 'Diagram',
        'make-diagram': 'Draw the diagram', 'diagram-of': 'The run, drawn by the planner',
        'move-up': 'Move {name} one place earlier', 'move-down': 'Move {name} one place later', drag: 'Drag {name}', moved: '{name} is now segment {n}.',
        'more-of': 'More on {card}', 'all-fields': 'What is rarely asked', 'this-segment': 'This segment', 'move-it': 'Move it in the list', copy: 'Copy it behind itself', remove: 'Take it out',
        insert: 'Put one before it', removed: '{name} taken out.', copied: '{name} copied.', inserted: 'A segment was put in.', 'go-review': 'Review and send', 'as-text': 'See the file as text',
        settings: 'This page', day: 'Black on white', sun: 'Bold, for sun', night: 'White on black', left: 'Keys for the left thumb', right: 'Keys for the right thumb', 'which-run': 'Which run the questions are about',
        'again-title': 'What is to be measured again?', 'again-whole': 'the whole segment', 'again-set': '{name}: to be measured again.', 'again-off': '{name}: not to be measured again.', 'again-none': 'Nothing on this card is answered yet.',
        send: 'Send', 'save-yaml': 'Save the route file', 'save-zip': 'Save all as one zip', share: 'Share ...', 'zip-holds': 'The zip holds the route file, what the engine made of it, and the photos.',
        'zip-no-engine': 'The zip holds the route file and the photos.', 'not-sent': 'Not sent yet: it is only on this device. Last change {at}.', 'not-sent-since': 'Not sent since {sent}: last change {at}.',
        'sent-all': 'Handed over at {sent}; nothing changed since.', 'handed-over': 'Handed over. See that it is really there before you wipe it here.', 'nothing-yet': 'Nothing is entered yet.', 'share-ready': 'All is made. Press Share again.', 'share-failed': 'Nothing was shared.',
        'papers-failed': 'The papers could not be made: {what}', 'papers-wait': 'The planner makes the papers ...',
        start: 'Begin a survey', resume: 'Go on with {title}', 'open-file': 'Open a route file', wipe: 'Wipe this survey from this device', 'wipe-again': 'Not sent! Press again to wipe it all the same', 'wipe-sure': 'Press again to wipe it', wiped: 'Wiped. Nothing of it is kept here.',
        unnamed: 'a survey without a title', 'start-text': 'Nothing leaves this device by itself. Answers and photos stay in this browser until you send or wipe them.',
        'ask-keep': 'This page was opened from disk. What it keeps in this browser, other pages opened from disk can read.', 'keep-yes': 'Keep it in this browser', 'kept-not': 'Not kept: a reload loses it. Save the file.',
        'storage-full': 'This browser has no room left: nothing more is kept here. Save the file now.', 'storage-none': 'This browser keeps nothing for this page. Save the file before you close it.',
        'other-tab': 'Another tab has gone on with this survey. Nothing is kept from here.', 'show-it': 'Show it', 'go-on-here': 'Go on here',
        'opened': '{name} opened: {n} segments.', 'opened-comments': '{name} opened. Its comments are not kept in what is saved from here: keep the file itself.', 'open-refused': '{name} is not a route file that can be read: {what}', 'open-no-engine': 'To open a file the page needs the engine, and this page has none.', 'open-not-text': 'it is not text in UTF-8',
        'open-too-large': 'it is larger than 4 MiB', 'open-newer': 'it is of version {n} of the format and this page knows version 1; nothing was changed',
        'newer-kept': 'What is kept here was written by a newer page. It is shown as text below; open that page, or save the file.',
        undone: 'Last change taken back.', 'put-back': 'Put back', 'undo-none': 'Nothing to take back.', 'photo-bad': 'That file is no picture this device can read. Nothing was added.', 'photo-added': '{name} added to {segment}.', 'photo-memory': 'The photo is not kept on reload: this browser has no room for it. Save the zip.',
        'photo-remove': 'Take out', 'photo-removed': '{name} taken out.', 'text-title': 'The file as text'
    }
};
let wordsNow = WORDS.en;

function say(key, put) {
    const text = wordsNow[key] ?? WORDS.en[key] ?? key;
    return put ? text.replace(/\{(\w+)\}/g, (all, name) => put[name] ?? all) : text;
}
