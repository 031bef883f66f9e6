using System.Text;

namespace PlatformForge.Cli.Terminals;

/// <summary>Where a command writes and what that place can show.</summary>
/// <param name="Out">Results.</param>
/// <param name="Error">Messages and progress.</param>
/// <param name="IsInteractive">Whether a person watches the messages, so that progress may be drawn over itself.</param>
/// <param name="TakesColour">Whether messages may be coloured.</param>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool IsInteractive = false, bool TakesColour = false)
{
    /// <summary>The process's own streams, in UTF-8 and with plain line ends everywhere.</summary>
    public static Terminal OfProcess()
    {
        bool dumb = string.Equals(Environment.GetEnvironmentVariable("TERM"), "dumb", StringComparison.Ordinal);
        bool watched = !Console.IsErrorRedirected && !dumb;
        return new(Writer(Console.OpenStandardOutput()), Writer(new DeafStream(Console.OpenStandardError())), watched,
            watched && string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR")));
    }

    private static StreamWriter Writer(Stream stream) => new(stream, new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
}
