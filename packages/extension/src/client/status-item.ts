import { type EvaluatedNotice, languageId } from '@tautline/language/protocol';
import { commands, type Disposable, StatusBarAlignment, ThemeColor, window } from 'vscode';
import { type BaseLanguageClient, State } from 'vscode-languageclient';

/** One item in the status bar: what fails first in the open file, or what the server is up to. */
export class StatusItem implements Disposable {
  private readonly item = window.createStatusBarItem('tautline.status', StatusBarAlignment.Left, 10);
  private readonly summaries = new Map<string, EvaluatedNotice>();
  private readonly held: Disposable[];
  private state: State;
  private everRan = false;

  constructor(client: BaseLanguageClient) {
    this.state = client.state;
    this.item.name = 'Tautline';
    this.item.command = 'tautline.menu';
    this.held = [
      this.item,
      client.onDidChangeState((change) => {
        this.state = change.newState;
        this.everRan ||= change.newState === State.Running;
        this.show();
      }),
      window.onDidChangeActiveTextEditor(() => this.show()),
      commands.registerCommand('tautline.menu', menu),
    ];
    this.show();
  }

  evaluated(notice: EvaluatedNotice): void {
    this.summaries.set(notice.uri, notice);
    this.show();
  }

  dispose(): void {
    for (const held of this.held) {
      held.dispose();
    }
  }

  private show(): void {
    const document = window.activeTextEditor?.document;
    if (document?.languageId !== languageId) {
      this.item.hide();
      return;
    }
    const notice = this.summaries.get(document.uri.toString());
    this.item.backgroundColor = undefined;
    if (this.state === State.Starting) {
      this.item.text = `$(sync~spin) Tautline ${this.everRan ? 'starting again' : 'starting'}`;
      this.item.tooltip = 'The language server is starting.';
    } else if (this.state === State.Stopped) {
      this.item.text = '$(debug-disconnect) Tautline stopped';
      this.item.tooltip = 'The language server is not running. Click to start it again.';
      this.item.backgroundColor = new ThemeColor('statusBarItem.warningBackground');
    } else if (notice !== undefined && notice.summary !== '') {
      this.item.text = `$(home) ${notice.summary}`;
      this.item.tooltip =
        notice.tier === 'full'
          ? 'From the whole house in space. A screening aid, not a permit.'
          : 'From the typical and end bow. A screening aid, not a permit.';
    } else {
      this.item.text = '$(home) Tautline';
      this.item.tooltip = 'Tautline is ready.';
    }
    this.item.show();
  }
}

async function menu(): Promise<void> {
  const choices = [
    {
      label: '$(open-preview) Open drawing sheet beside',
      command: 'tautline.openPreview',
    },
    { label: '$(home) Check the whole house', command: 'tautline.checkWholeHouse' },
    { label: '$(git-commit) Show what changed since the last commit', command: 'tautline.showChanges' },
    { label: '$(beaker) Explore what may vary', command: 'tautline.explore' },
    {
      label: '$(symbol-ruler) Show calculation',
      command: 'tautline.showCalculation',
    },
    {
      label: '$(edit) Write assumed values into the text',
      command: 'tautline.writeAssumed',
    },
    {
      label: '$(debug-restart) Restart language server',
      command: 'tautline.restartServer',
    },
    { label: '$(output) Show log', command: 'tautline.showLog' },
  ];
  const choice = await window.showQuickPick(choices, {
    placeHolder: 'Tautline',
  });
  if (choice !== undefined) {
    await commands.executeCommand(choice.command);
  }
}
