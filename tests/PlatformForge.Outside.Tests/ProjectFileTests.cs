namespace PlatformForge.Outside.Tests;

[Collection("samples")]
public class ProjectFileTests(WrittenSamples samples)
{
    [Fact]
    public void Samples_and_the_starting_file_are_TOML_that_fits_the_schema()
    {
        string folder = Directory.CreateTempSubdirectory("platformforge-schema-").FullName;
        try
        {
            string schema = Path.Combine(folder, "schema.json"), start = Path.Combine(folder, "platform.toml");
            var said = WrittenSamples.CommandLine("schema");
            Assert.Equal(0, said.Exit);
            File.WriteAllText(schema, said.Out);
            Assert.Equal(0, WrittenSamples.CommandLine("init", start, "--full", "--quiet").Exit);
            Assert.All(Written.Parse(Tool.Node("check-toml.mjs", [schema, start, .. samples.Names.Select(WrittenSamples.SampleFile)])), file =>
                Assert.True(file.GetProperty("complaints").GetArrayLength() == 0, file.ToString()));

            string wrong = Path.Combine(folder, "wrong.toml");
            File.WriteAllText(wrong, "layuot = 3\n" + File.ReadAllText(start));
            Assert.NotEqual(0, Written.Parse(Tool.Node("check-toml.mjs", schema, wrong)[0]).GetProperty("complaints").GetArrayLength());
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Theory]
    [InlineData("manifest")]
    [InlineData("design")]
    [InlineData("report")]
    public void What_others_may_read_fits_the_schema_in_presets(string name)
    {
        string schema = Path.Combine(Tree.Root, "presets", name + ".schema.json");
        string[] files = [.. samples.Names.Select(s => Path.Combine(samples.Folder, s, name + ".json"))];
        Assert.All(Written.Parse(Tool.Node("check-json.mjs", [schema, .. files])),
            file => Assert.True(file.GetProperty("complaints").GetArrayLength() == 0, file.ToString()));
        string wrong = Path.GetTempFileName();
        File.WriteAllText(wrong, File.ReadAllText(files[0]).Replace("\"project\"", "\"projekt\"", StringComparison.Ordinal));
        Assert.NotEqual(0, Written.Parse(Tool.Node("check-json.mjs", schema, wrong)[0]).GetProperty("complaints").GetArrayLength());
        File.Delete(wrong);
    }

    [Fact]
    public void Every_written_JSON_is_read_by_others()
    {
        var files = samples.Files(".json");
        var said = Tool.Run("node", ["-e", "for (const f of process.argv.slice(1)) JSON.parse(require('fs').readFileSync(f, 'utf8')); console.log('read');",
            .. files]);
        Assert.Equal("read", said.Out.Trim());
    }
}
