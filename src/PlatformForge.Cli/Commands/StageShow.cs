using PlatformForge.Cli.Terminals;
using Spectre.Console;

namespace PlatformForge.Cli.Commands;

/// <summary>Shows which stage a run is at: a moving line where a person watches, plain lines elsewhere, nothing when silent.</summary>
internal sealed class StageShow
{
    private readonly Action<string> show;

    private StageShow(Action<string> show) => this.show = show;

    /// <summary>A stage begins.</summary>
    public void Begin(string stage) => show(stage);

    public static CommandResult Run(Terminal terminal, bool silent, bool colour, StageTimes? times, Func<StageShow, CommandResult> work) =>
        Run(terminal, silent, colour, times is null ? work : show => work(new(stage =>
        {
            times.Mark(stage);
            show.Begin(stage);
        })));

    private static CommandResult Run(Terminal terminal, bool silent, bool colour, Func<StageShow, CommandResult> work)
    {
        if (silent)
        {
            return work(new(_ => { }));
        }

        if (!terminal.IsInteractive)
        {
            return work(new(terminal.Error.WriteLine));
        }

        var console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(terminal.Error),
            ColorSystem = colour ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
        });
        CommandResult? result = null;
        console.Status().Start("…", status => result = work(new(stage => status.Status(Markup.Escape(stage)))));
        return result!;
    }
}
