namespace PlatformForge.Units;

/// <summary>What a nozzle's lines ask of a thickness that nobody has stated.</summary>
public static class PrintedLines
{
    // A wall holds from so many lines on: common practice, no source.
    private const int Least = 2;

    /// <summary>Two lines with what is cut into them, up to the next hundredth, mm: so it is told, and so a user would state it.</summary>
    /// <param name="nozzle">Width of a line, mm.</param>
    /// <param name="cut">Depth of what is cut into them, mm.</param>
    public static double Two(double nozzle, double cut = 0) => Math.Ceiling((((Least * nozzle) + cut) * 100) - Tolerances.Rounding) / 100;
}
