using System.Text;
using McMaster.Extensions.CommandLineUtils;
using PlatformForge.Cli.Arguments;
using PlatformForge.Projects.Presets;
using PlatformForge.Projects.Schemas;
using PlatformForge.Projects.Starts;
using PlatformForge.Units;

namespace PlatformForge.Cli.Commands;

/// <summary>Writes a project file to start from.</summary>
internal static class InitCommand
{
    private const string Examples = """

        Examples:
          platformforge init my-halt.toml               a short file to fill in, which builds as it is
          platformforge init my-halt.toml --scale 1:148 --vehicle bogie-coach-57ft --bed 180x180 --track "300 left"
          platformforge init my-halt.toml --full        every key there is, with a comment
          platformforge init --sample pendlewick        a worked example: a curved platform and five vehicles
          platformforge init --form my-coach.toml       a form for a vehicle of your own: what to measure, and where
        """;

    public static void Add(CommandLineApplication app, Session session) => app.Command("init", command =>
    {
        command.Description = "Write a project file to start from: short, and building as it is.";
        command.ExtendedHelpText = Examples;
        var file = command.Argument("file", "Name of the new file; platform.toml when left out.");
        var sample = command.Option("-s|--sample <name>", $"A worked example instead: {string.Join(" or ", PresetShelf.SampleNames)}.",
            CommandOptionType.SingleValue);
        var vehicle = command.Option("--form", "A form for a vehicle instead, to be named as a preset or given to --with-vehicle.", CommandOptionType.NoValue);
        var full = command.Option("--full", "Every key there is, those with a default as comments.", CommandOptionType.NoValue);
        var given = InitChoice.Add(command);
        var scale = command.Option("--scale <name>", "Scale of the new file, as 'platformforge presets scales' lists it; 4mm when left out.",
            CommandOptionType.SingleValue);
        var force = command.Option("--force", "Replace a file that is there.", CommandOptionType.NoValue);
        command.OnExecute(() => session.Finish("init", _ => given.IsAny && (vehicle.HasValue() || sample.HasValue() || full.HasValue())
            ? Fault("PF1017", FaultKind.Input, "--vehicle, --bed and --track speak of a short file.", "Give them without --full, --form and --sample.")
            with
            { ExitCode = ExitCodes.Usage }
            : scale.HasValue() && (vehicle.HasValue() || sample.HasValue())
            ? Fault("PF1017", FaultKind.Input, $"{(sample.HasValue() ? "A sample has a scale" : "A form for a vehicle has no scale")} of its own.",
                "Leave --scale out.") with
            { ExitCode = ExitCodes.Usage }
            : vehicle.HasValue() && sample.HasValue()
            ? Fault("PF1017", FaultKind.Input, "--form and --sample ask for two different files.", "Give one of them.") with { ExitCode = ExitCodes.Usage }
            : vehicle.HasValue() ? WriteVehicle(file.Value ?? "vehicle.toml", force.HasValue())
            : Write(file.Value, sample.Value(), scale.Value(), full.HasValue() ? null : given, force.HasValue())));
    });

    private static CommandResult Write(string? file, string? sample, string? scale, InitChoice? given, bool force)
    {
        var meant = scale is null ? [] : PresetShelf.Scales(scale);
        if (scale is not null && meant.Count != 1)
        {
            string said = scale.Length > 40 ? scale[..40] + "…" : scale;
            var fault = meant.Count == 0
                ? Fault("PF1011", FaultKind.Input, $"There is no scale \"{said}\".", "See: platformforge presets scales")
                : Fault("PF1089", FaultKind.Input, ScaleWords.Ambiguous(said, meant), ScaleWords.Choose(meant));
            return fault with { ExitCode = ExitCodes.Usage };
        }

        string path = file ?? (sample is null ? "platform.toml" : sample.ToLowerInvariant() + ".toml");
        var chosen = meant.Count > 0 ? meant[0] : PresetShelf.Find(PresetKind.Scales, "4mm")!;
        var first = sample is null && given is not null ? given.Read(chosen) : null;
        if (first is { Value: null })
        {
            return new(first.Findings) { ExitCode = ExitCodes.Usage };
        }

        var tried = first?.Value is { } choice ? FirstFile.Write(choice) : null;
        if (tried is { Value: null })
        {
            return new(tried.Findings) { ExitCode = ExitCodes.Usage };
        }

        string? text = sample is not null ? PresetShelf.Sample(sample) : tried?.Value ?? StartingFile.Write(chosen);
        if (text is null)
        {
            return Fault("PF1011", FaultKind.Input, $"There is no sample \"{sample}\".", $"Known: {string.Join(", ", PresetShelf.SampleNames)}.")
                with
            { ExitCode = ExitCodes.Usage };
        }

        var files = new List<(string Path, string Text)> { (path, text) };
        foreach (var (beside, readings) in sample is null ? [] : PresetShelf.FilesOf(sample))
        {
            files.Add((Path.Combine(Path.GetDirectoryName(path) ?? "", beside), readings));
        }

        return files.Select(f => Obstacle(f.Path, force)).FirstOrDefault(o => o is not null) ?? Write(files, force);
    }

    private static CommandResult WriteVehicle(string path, bool force) =>
        Obstacle(path, force) ?? Write([(path, VehicleSheet.Write())], force, "platformforge check PROJECT --with-vehicle " + path);

    // Only a plain file is replaced: moving a new one onto a device or a pipe would take it away from everybody, and onto a link would part it from its file.
    private static CommandResult? Obstacle(string path, bool force)
    {
        var there = new FileInfo(path);
        return Directory.Exists(path) ? Fault("PF1020", FaultKind.Output, $"{path} is a folder.",
            $"Name a file in it, such as {Path.Combine(path, "platform.toml")}.")
            : there.LinkTarget is { } target ? Fault("PF1020", FaultKind.Output, $"{path} is a link to {target}; it was left as it is.",
                "Choose another name, or name what the link leads to.")
            : !there.Exists ? null
            : !force ? Fault("PF1020", FaultKind.Output, $"{path} is there already; it was left as it is.", "Choose another name, or replace it with --force.")
            : there.Length == 0 ? Fault("PF1020", FaultKind.Output, $"{path} is empty, or it is a pipe or a device; it was left as it is.",
                "Choose another name, or delete it first if nothing needs it.")
            : null;
    }

    private static CommandResult Write(List<(string Path, string Text)> files, bool force, string? next = null)
    {
        foreach (var (path, text) in files)
        {
            try
            {
                if (Path.GetDirectoryName(path) is { Length: > 0 } beside)
                {
                    Directory.CreateDirectory(beside);
                }

                Put(path, text, force);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException or ArgumentException)
            {
                return Fault("PF1020", FaultKind.Output, $"{path} can't be written: {e.Message.ReplaceLineEndings(" ")}",
                    "Choose a folder that you may write to.");
            }
        }

        return new([])
        {
            InPlace = $"Written all the same: {string.Join(", ", files.Select(f => f.Path))}.",
            Plain = o => o.WriteLine($"Wrote {string.Join(", ", files.Select(f => f.Path))}. Next: {next ?? "platformforge check " + files[0].Path}"),
            Json = j => j.WriteString("file", files[0].Path),
        };
    }

    // Beside its place first, under a name that nothing has, and there in one step: what stands there is whole at every moment.
    private static void Put(string path, string text, bool force)
    {
        string waiting = $"{path}.{Guid.NewGuid():N}.new";
        try
        {
            using (var stream = new FileStream(waiting, FileMode.CreateNew, FileAccess.Write))
            {
                stream.Write(new UTF8Encoding(false).GetBytes(text));
                stream.Flush(flushToDisk: true);
            }

            File.Move(waiting, path, force);
        }
        catch
        {
            File.Delete(waiting);
            throw;
        }
    }

    private static CommandResult Fault(string code, FaultKind kind, string message, string remedy) =>
        new([Finding.Error(code, "", message, remedy, kind)]);
}
