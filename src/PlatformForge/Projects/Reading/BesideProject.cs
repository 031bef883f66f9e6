using PlatformForge.Units;

namespace PlatformForge.Projects.Reading;

/// <summary>Reads files that a project names: beside it or below its folder, and nowhere else.</summary>
/// <param name="folder">The project's folder; null when it was read from memory and has none.</param>
internal sealed class BesideProject(string? folder)
{
    /// <summary>Largest survey file taken, bytes: some hundred thousand readings.</summary>
    public const int LargestSurvey = InputLimits.SurveyBytes;

    /// <summary>The text of a file named from the project's folder.</summary>
    /// <param name="name">Its name as the project has it.</param>
    /// <param name="key">Key that names it.</param>
    /// <param name="place">Where that key stands: faults of the name are told there, faults inside the file in the file.</param>
    /// <param name="largest">Largest file taken, bytes.</param>
    public Outcome<string> Read(string name, string key, SourcePlace place, int largest)
    {
        string full = folder is null ? "" : Path.GetFullPath(Path.Combine(folder, name));
        if (folder is null || Path.IsPathRooted(name)
            || !full.StartsWith(Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder)) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
        {
            return Outcome.Fault<string>(
                At(Finding.Error("PF1011", key, $"The file \"{name}\" does not lie beside the project.",
                    "Put it into the project's folder and name it from there, such as \"stock/long-coach.toml\"."), place));
        }

        var text = ProjectText.Read(full, name, largest);
        return text
            with
        {
            Findings = [.. text.Findings.Select(f => f.Code == "PF1004" ? f with { Key = key }
                : At(f with { Key = key, Message = $"\"{name}\": {f.Message}" }, place))]
        };
    }

    private static Finding At(Finding finding, SourcePlace place) => finding with { File = place.File, Line = place.Line, Column = place.Column };
}
