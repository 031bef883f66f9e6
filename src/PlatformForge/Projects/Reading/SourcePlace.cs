namespace PlatformForge.Projects.Reading;

/// <summary>Where something stands in a file, or in an option of the command line when the line is 0.</summary>
/// <param name="File">File as the user named it, or the option.</param>
/// <param name="Line">Line from 1; 0 when there is none.</param>
/// <param name="Column">Column from 1; 0 when there is none.</param>
public readonly record struct SourcePlace(string File, int Line, int Column);
