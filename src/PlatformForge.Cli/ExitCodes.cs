using PlatformForge.Units;

namespace PlatformForge.Cli;

/// <summary>What the process tells the shell.</summary>
internal static class ExitCodes
{
    public const int Done = 0;
    public const int OurFault = 1;
    public const int Usage = 2;
    public const int WrongFile = 3;
    public const int BrokenRule = 4;
    public const int BadMesh = 5;
    public const int CannotWrite = 6;
    public const int Interrupted = 130;

    /// <summary>The code for a set of findings: what has to be mended first decides.</summary>
    /// <param name="findings">Findings of the run.</param>
    /// <param name="strict">Whether warnings count as broken rules.</param>
    public static int Of(IReadOnlyList<Finding> findings, bool strict = false)
    {
        var errors = findings.Where(f => f.Severity == Severity.Error).Select(f => f.Kind switch
        {
            FaultKind.Input => WrongFile,
            FaultKind.DesignRule => BrokenRule,
            FaultKind.Mesh => BadMesh,
            _ => CannotWrite,
        }).ToArray();
        return errors.Length > 0 ? errors.Min()
            : strict && findings.Any(f => f.Severity == Severity.Warning) ? BrokenRule
            : Done;
    }
}
