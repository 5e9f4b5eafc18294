<?xml version="1.0" encoding="UTF-8"?>
<!-- Where every paper begins. The plan comes in as plan.xml has it, with one child more:
       <print paper="brief|parts|design|test|pack" mark="3F2A-11C0"><style>...</style><diagram><svg/></diagram></print>
     Figures come as finished strings, most of them under <papers> (papers.rng); a template sets them out and does no arithmetic. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform"
    xmlns:svg="http://www.w3.org/2000/svg" exclude-result-prefixes="svg">
  <xsl:include href="house.xsl"/>
  <xsl:include href="brief.xsl"/>
  <xsl:include href="parts.xsl"/>
  <xsl:include href="design.xsl"/>
  <xsl:include href="test.xsl"/>


  <xsl:variable name="paper" select="/plan/print/@paper"/>

  <xsl:template match="/plan">
    <html lang="en">
      <xsl:call-template name="head"/>
      <body class="paper-{$paper}">
        <xsl:choose>
          <xsl:when test="$paper = 'pack'"><xsl:call-template name="pack"/></xsl:when>
          <xsl:otherwise>
            <main>
              <xsl:call-template name="one">
                <xsl:with-param name="which" select="$paper"/>
              </xsl:call-template>
            </main>
          </xsl:otherwise>
        </xsl:choose>
        <xsl:call-template name="foot"/>
      </body>
    </html>
  </xsl:template>

  <xsl:template name="one">
    <xsl:param name="which"/>
    <article class="paper" id="{$which}">
      <xsl:call-template name="title-block">
        <xsl:with-param name="which" select="$which"/>
      </xsl:call-template>
      <xsl:choose>
        <xsl:when test="$which = 'brief'"><xsl:apply-templates select="/plan" mode="brief"/></xsl:when>
        <xsl:when test="$which = 'parts'"><xsl:apply-templates select="/plan" mode="parts"/></xsl:when>
        <xsl:when test="$which = 'design'"><xsl:apply-templates select="/plan" mode="design"/></xsl:when>
        <xsl:when test="$which = 'test'"><xsl:apply-templates select="/plan" mode="test"/></xsl:when>
      </xsl:choose>
    </article>
  </xsl:template>

  <!-- The job pack: a cover with the contents, then each paper on a page of its own. -->
  <xsl:template name="pack">
    <header class="cover">
      <p class="kind">Job pack</p>
      <h1><xsl:value-of select="job/@title"/></h1>
      <xsl:call-template name="job-facts"/>
      <xsl:call-template name="verdict"/>
      <xsl:call-template name="stop"/>
      <div class="said">
        <xsl:for-each select="papers/said/sentence"><p><xsl:value-of select="."/></p></xsl:for-each>
      </div>
      <nav aria-label="Contents">
        <h2>Contents</h2>
        <ol class="contents">
          <li><a href="#brief">Crew brief</a><span> for the crew leader and the second hand: what is built, in what order, stretch by stretch</span></li>
          <li><a href="#diagram">Run diagram</a><span> the run unfolded, to scale</span></li>
          <li><a href="#parts">Parts list</a><span> for the counter and the van, by aisle</span></li>
          <li><a href="#test">Test sheet</a><span> what to measure, what to expect, what is allowed</span></li>
          <li><a href="#design">Design sheet</a><span> for the designer and the inspector: every figure with its source</span></li>
        </ol>
      </nav>
    </header>
    <main>
      <xsl:call-template name="one"><xsl:with-param name="which" select="'brief'"/></xsl:call-template>
      <xsl:call-template name="one"><xsl:with-param name="which" select="'parts'"/></xsl:call-template>
      <xsl:call-template name="one"><xsl:with-param name="which" select="'test'"/></xsl:call-template>
      <xsl:call-template name="one"><xsl:with-param name="which" select="'design'"/></xsl:call-template>
    </main>
  </xsl:template>
</xsl:stylesheet>
