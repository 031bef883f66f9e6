using McMaster.Extensions.CommandLineUtils;

namespace PlatformForge.Cli.Terminals;

/// <summary>
/// Holds back what the command line library writes, help and hints, until it is clear whether the line could be parsed: hints that come
/// with a fault would stand among the results.
/// </summary>
internal sealed class StreamConsole : IConsole, IDisposable
{
    private readonly StringWriter held = new(System.Globalization.CultureInfo.InvariantCulture) { NewLine = "\n" };

    public event ConsoleCancelEventHandler? CancelKeyPress
    {
        add { }
        remove { }
    }

    public TextWriter Out => held;

    public TextWriter Error => held;

    public TextReader In => TextReader.Null;

    public bool IsInputRedirected => true;

    public bool IsOutputRedirected => true;

    public bool IsErrorRedirected => true;

    public ConsoleColor ForegroundColor { get; set; }

    public ConsoleColor BackgroundColor { get; set; }

    /// <summary>Lets go of what was held back.</summary>
    public void Release(TextWriter to)
    {
        if (held.GetStringBuilder().Length > 0)
        {
            to.Write(held.ToString());
        }
    }

    public void Dispose() => held.Dispose();

    public void ResetColor()
    {
    }
}
