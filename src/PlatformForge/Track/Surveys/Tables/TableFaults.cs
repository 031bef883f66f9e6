using PlatformForge.Units;

namespace PlatformForge.Track.Surveys.Tables;

/// <summary>Puts what is wrong with a survey file on its place there.</summary>
/// <param name="file">Name of the file.</param>
/// <param name="findings">Receives what is wrong.</param>
internal sealed class TableFaults(string? file, List<Finding> findings)
{
    /// <summary>Tells a finding of a line and, counted from 1, a column; 0 where it is of the whole row.</summary>
    public void Add(Finding finding, int line, int column = 0) => findings.Add(finding with { File = file, Line = line, Column = column });
}
