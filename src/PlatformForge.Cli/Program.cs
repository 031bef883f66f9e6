namespace PlatformForge.Cli;

internal static class Program
{
    private static int Main() => 0;
}
